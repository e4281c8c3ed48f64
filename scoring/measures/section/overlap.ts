/**
 * **Overlap**: metal resting on plate that never melted: toe of the metal minus edge of the fused plate, along the plate's surface
 * (ISO 5817 506, AWS D1.1 5.24; cold lap in the shop). mm; negative: the plate is fused beyond the metal, nothing rests on it.
 * @param toe_mm way from root to toe along the plate's surface
 * @param fusedEdge_mm way from root to the edge of the fused plate
 */
export function overlap_mm(toe_mm: number, fusedEdge_mm: number): number {
  return toe_mm - fusedEdge_mm;
}

/**
 * **Toe risk**: melted plate outside the metal. The groove was molten and froze full of its own metal; on steel it may have drained
 * and left undercut, which this model carries only where a weld drops metal. mm, 0 where there is none.
 */
export function toeRisk_mm(overlap: number): number {
  return Math.max(0, -overlap);
}
