/** More values than a form of one page has; what is larger is worth the way to another thread. */
const MANY = 400;

/** Whether a body has so many values that to read and compute it may hold up others; counts no further than that. */
export function isLarge(body: unknown): boolean {
  let left = MANY;
  const open: unknown[] = [body];
  while (open.length > 0) {
    const value = open.pop();
    left -= 1;
    if (left < 0) return true;
    if (typeof value !== 'object' || value === null) continue;
    const items: readonly unknown[] = Object.values(value);
    if (items.length > left) return true;
    open.push(...items);
  }
  return false;
}
