import { loadComputations, type Registered } from '../../server/compute/registry.ts';
import { grown, listAt, listsOf, type Value } from './grow.ts';
import { quickest, shown } from './measure.ts';
import { OTHER_INPUTS } from './other-inputs.ts';

/*
 * How the time of a computation grows with its lists. One that costs more than twice what its length has grown by,
 * between any two lengths, is told as steep: sorting (n log n) stays far below it, a loop within a loop does not.
 */
const STEEP = 2;
/** The last is past what any list may have: it is cut to the longest that is taken. */
const TIMES = [10, 100, 10_000] as const;

const say = (line: string) => process.stdout.write(`${line}\n`);

interface Step {
  readonly length: number;
  readonly time: number;
}

async function stepsOf(each: Registered, input: Value, path: readonly string[]): Promise<Step[]> {
  const run = (given: Value) => each.run(given, 'inch');
  const steps: Step[] = [{ length: listAt(input, path).length, time: await quickest(() => run(input)) }];
  for (const times of TIMES) {
    const more = grown(input, path, times, run);
    if (more === undefined || more.length <= (steps.at(-1)?.length ?? 0)) continue;
    steps.push({ length: more.length, time: await quickest(() => run(more.input)) });
  }
  return steps;
}

/** How many times the cost grew for each time the list grew, at the worst: from one step to any later one. */
function steepest(steps: readonly Step[]): number {
  const pairs = steps.flatMap((to, index) =>
    steps.slice(0, index).map((from) => to.time / from.time / (to.length / from.length)),
  );
  return Math.max(0, ...pairs);
}

say(
  'Each list of a computation made 10 and 100 times as long, then as long as it may be: items, time, times the first.',
);
for (const each of (await loadComputations()).values()) {
  const inputs: readonly Value[] = [each.example.inputs, ...(OTHER_INPUTS[each.name] ?? [])];
  for (const input of inputs) {
    for (const path of listsOf(input)) {
      const steps = await stepsOf(each, input, path);
      const first = steps[0];
      const told = steps.map(
        ({ length, time }) =>
          `${String(length).padStart(5)} ${shown(time).padStart(9)} ×${(time / (first?.time ?? time)).toFixed(1).padEnd(6)}`,
      );
      const verdict = steps.length === 1 ? 'can’t grow' : steepest(steps) > STEEP ? 'STEEP' : '';
      say(`  ${`${each.name} ${path.join('/')}`.padEnd(44)} ${told.join('  ')} ${verdict}`);
    }
  }
}
