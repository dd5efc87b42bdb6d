/**
 * How often `work` calls a function of Math. It says how much is calculated, and says the same on every machine,
 * however busy.
 */
export function processorTimeOf(work: () => void): number {
  let calls = 0;
  const kept = new Map<string, unknown>();
  for (const name of Object.getOwnPropertyNames(Math)) {
    const original: unknown = Reflect.get(Math, name);
    if (typeof original !== 'function') continue;
    kept.set(name, original);
    const counted = new Proxy(original, {
      apply(target, self, given) {
        calls += 1;
        return Reflect.apply(target, self, given);
      },
    });
    Reflect.set(Math, name, counted);
  }
  try {
    work();
  } finally {
    for (const [name, original] of kept) Reflect.set(Math, name, original);
  }
  return calls;
}
