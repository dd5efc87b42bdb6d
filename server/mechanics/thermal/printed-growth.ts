/** Expansions above this are of aluminium, below it of iron or steel. */
const ALUMINIUM_FROM = 20e-6;

/**
 * What is printed for three pairs of block and head. Set so much less cold is a gap that grows by as much; of an iron pair
 * the two disagree, so that nobody goes by one of them alone.
 */
const PRINTED = [
  {
    aluminium: 0,
    pair: 'iron block and head',
    chart: '.002 in more',
    grows: '.003 to .005 in',
    agree: false,
  },
  {
    aluminium: 1,
    pair: 'an iron block and an aluminium head',
    chart: '.006 in less',
    grows: '.005 to .007 in',
    agree: true,
  },
  {
    aluminium: 2,
    pair: 'an aluminium block and head',
    chart: '.012 in less',
    grows: '.007 to .015 in and more',
    agree: true,
  },
] as const;

/** What is printed of that pair of materials, by their expansions. */
export function printedFor({ block, head }: { readonly block: number; readonly head: number }): string[] {
  // A head of iron on aluminium is printed nowhere.
  if (block >= ALUMINIUM_FROM && head < ALUMINIUM_FROM) return [];
  const of = [block, head].filter((each) => each >= ALUMINIUM_FROM).length;
  const row = PRINTED.find(({ aluminium }) => aluminium === of);
  if (row === undefined) return [];
  return [
    `Printed for ${row.pair}: set ${row.chart} cold (a web magazine’s chart); the gap grows by ${row.grows} (a magazine’s answer). ${row.agree ? 'The two agree; read one pair cold, then hot, all the same.' : 'They don’t agree with each other: read one pair cold, then hot.'}`,
  ];
}
