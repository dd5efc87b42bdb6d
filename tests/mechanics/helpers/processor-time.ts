/**
 * How often `work` calls a function of Math. It says how much is calculated, and says the same on every machine,
 * however busy.
 */
export function processorTimeOf(work: () => void): number {
  let calls = 0;
  const kept = Object.entries(Object.getOwnPropertyDescriptors(Math));
  for (const [name, descriptor] of kept) {
    const original: unknown = descriptor.value;
    if (typeof original !== 'function') continue;
    const counted = new Proxy(original, {
      apply(target, self, given) {
        calls += 1;
        return target.apply(self, given);
      },
    });
    Object.defineProperty(Math, name, { ...descriptor, value: counted });
  }
  try {
    work();
  } finally {
    for (const [name, descriptor] of kept) Object.defineProperty(Math, name, descriptor);
  }
  return calls;
}
