import { loadComputations } from '../../server/compute/registry.ts';
import { drawingsOf } from '../../server/drawings/registry.ts';

const computations = await loadComputations();

/** The first drawing of a computation with these inputs. */
export function draw(name: string, inputs: object, units: 'inch' | 'metric' = 'inch') {
  const each = computations.get(name);
  if (each === undefined) throw new Error(`no computation ${name}`);
  const [first] = drawingsOf(each, inputs, each.run(inputs, 'inch').result, units);
  if (first === undefined) throw new Error(`no drawing of ${name}`);
  return first;
}

/** The cells of its table, row by row. */
export const cells = (drawing: ReturnType<typeof draw>) =>
  (drawing.table?.rows ?? []).map((row) =>
    row.cells.map((cell) => (typeof cell === 'string' ? cell : cell.text)),
  );
