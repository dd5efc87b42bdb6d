/** True for an error of Node, the system or PostgreSQL that carries one of these codes. */
export function hasCode(error: unknown, ...codes: readonly string[]): boolean {
  return (
    error instanceof Error && 'code' in error && typeof error.code === 'string' && codes.includes(error.code)
  );
}

export function messageOf(error: unknown): string {
  if (error instanceof AggregateError && error.message === '') return error.errors.map(messageOf).join('; ');
  return error instanceof Error ? error.message : String(error);
}

/** The text of a file, or undefined where there is no such file. */
export async function ifPresent<T>(reading: Promise<T>): Promise<T | undefined> {
  try {
    return await reading;
  } catch (error) {
    if (hasCode(error, 'ENOENT')) return undefined;
    throw error;
  }
}
