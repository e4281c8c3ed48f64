/** Faults of disk or database that a later try may not meet: by the codes of Node and the classes of SQLSTATE. */
export function isPassing(error: Error): boolean {
  for (let at: unknown = error; at instanceof Error; at = at.cause) {
    const code = 'code' in at ? String(at.code) : '';
    if (/^(ENOSPC|EIO|EROFS|EDQUOT|ECONN\w+|ETIMEDOUT|EPIPE|ENOTFOUND|57P0\d|08\w{3}|53\w{3}|40\w{3})$/.test(code))
      return true;
    if (/Connection terminated|PGlite is closed/.test(at.message)) return true;
  }
  return false;
}
