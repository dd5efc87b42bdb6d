import { fingerprintOf } from './fingerprint.ts';
import { keptResult } from './result.ts';
import { SLICES } from './slices.ts';

const cells = (...values: readonly (string | number)[]) => `| ${values.join(' | ')} |`;

/** The table of scores: found (those that ran out of time among them) over all that some test could find. */
export async function scoreTable(): Promise<string> {
  const rows = await Promise.all(
    SLICES.map(async (slice) => {
      const kept = await keptResult(slice.name);
      if (kept === undefined) {
        return cells(`\`${slice.name}\``, '', '', '', '', 'not run yet');
      }
      const found = kept.killed + kept.ranOutOfTime;
      const all = found + kept.survivors.length;
      const explained = kept.survivors.filter(({ why }) => why !== undefined).length;
      const old = kept.fingerprint === (await fingerprintOf(slice)) ? '' : ', changed since';
      return cells(
        `\`${slice.name}\``,
        all,
        kept.ranOutOfTime,
        kept.survivors.length,
        explained,
        `${((100 * found) / all).toFixed(1)} %${old}`,
      );
    }),
  );
  return [
    cells('slice', 'mutants', 'ran out of time', 'survived', 'of them explained', 'score'),
    cells('---', '---', '---', '---', '---', '---'),
    ...rows,
  ].join('\n');
}
