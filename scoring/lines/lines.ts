import { plusMinusAt } from '../measures/precision.ts';
import { sizeAsked } from '../schema/exercise.ts';
import type { LineMeasure, Profile } from '../schema/profile.ts';
import type { Line } from '../schema/result.ts';
import type { Station } from '../schema/station.ts';
import { compare, worse } from './limit.ts';
import type { LineQuestion } from './readers.ts';
import { profileLines, stretches } from './rule-line.ts';

/** A fillet that is not tied in at the root is never within, whatever a school's own profile leaves out. */
const ROOT_ALWAYS: Profile['rules'][number] = {
  measure: 'root fusion',
  clause: 'not tied in at the root is never within',
  status: 'memory',
  plates: { over: 0, upTo: null },
  limit: { form: 'floor', value: 0 },
  extent: { kind: 'anywhere' },
};

/** Lines of the profile and of the exercise's own limits. */
export function allLines(profile: Profile, q: LineQuestion): Line[] {
  const hasRoot = profile.rules.some((r) => r.measure === 'root fusion');
  const complete = hasRoot ? profile : { ...profile, rules: [ROOT_ALWAYS, ...profile.rules] };
  return [...profileLines(complete, q), ...exerciseLines(q)];
}

function exerciseLines(q: LineQuestion): Line[] {
  if (q.stations.length === 0) return [];
  const { asked } = q;
  const lines: Line[] = [];
  if (asked.atMost_mm !== null) {
    const most = sizeAsked({ ...asked, size_mm: asked.atMost_mm }).leg_mm;
    lines.push(
      ownLine(
        q,
        'size over',
        (s) => s.size_mm,
        plusMinusAt('leg', q.cell_mm, q.run),
        most,
        `asked: at most ${asked.atMost_mm} mm ${asked.kind}`,
      ),
    );
  }
  if (asked.edgeBack_mm !== null && q.joint.kind === 'lap') {
    const e = plusMinusAt('overlap', q.cell_mm);
    lines.push(
      ownLine(
        q,
        'edge melted back',
        (s) => s.edgeMeltedBack_mm ?? 0,
        e,
        asked.edgeBack_mm,
        `asked: edge melted back at most ${asked.edgeBack_mm} mm`,
      ),
    );
  }
  return lines;
}

function ownLine(
  q: LineQuestion,
  measure: LineMeasure,
  read: (s: Station) => number,
  plusMinus: number,
  limit: number,
  rule: string,
): Line {
  let worst = q.stations[0]!;
  let verdict: Line['verdict'] = 'within';
  const places: number[] = [];
  for (const s of q.stations) {
    if (read(s) > read(worst)) worst = s;
    const at = compare(read(s), plusMinus, limit, 'at most');
    verdict = worse(verdict, at);
    if (at !== 'within') places.push(s.y_mm);
  }
  return {
    measure,
    side: measure === 'edge melted back' ? 'B' : null,
    reading: read(worst),
    plusMinus,
    unit: 'mm',
    limit: Math.round(limit * 1000) / 1000,
    sense: 'at most',
    rule,
    status: 'exercise',
    verdict,
    y_mm: worst.y_mm,
    places: stretches(places, q.step_mm),
  };
}
