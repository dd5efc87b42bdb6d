import table from '../../../seeds/materials.json' with { type: 'json' };
import { bareInches, inches } from '../kit/say-inches.ts';
import { IN } from '../kit/si.ts';

const { aluminiumFrom, printedGrowth } = table;

/** Expansions above this are of aluminium, below it of iron or steel [1/K]. */
const ALUMINIUM_FROM = aluminiumFrom.expansion * 1e-6;

type Printed = (typeof printedGrowth.pairs)[number];

const coldSaid = ({ coldLess }: Printed): string =>
  `${inches(Math.abs(coldLess) * IN)} ${coldLess < 0 ? 'more' : 'less'}`;

function growsSaid({ grows, more }: Printed): string {
  const [from = 0, to = 0] = grows;
  return `${bareInches(from * IN)} to ${inches(to * IN)}${more ? ' and more' : ''}`;
}

/**
 * What is printed of that pair of materials, by their expansions: how much less is set cold, and what the gap grows by. Of
 * an iron pair the two disagree, so that nobody goes by one of them alone.
 */
export function printedFor({ block, head }: { readonly block: number; readonly head: number }): string[] {
  // A head of iron on aluminium is printed nowhere.
  if (block >= ALUMINIUM_FROM && head < ALUMINIUM_FROM) return [];
  const of = [block, head].filter((each) => each >= ALUMINIUM_FROM).length;
  const row = printedGrowth.pairs.find(({ aluminium }) => aluminium === of);
  if (row === undefined) return [];
  return [
    `Printed for ${row.pair}: set ${coldSaid(row)} cold (a web magazine’s chart); the gap grows by ${growsSaid(row)} (a magazine’s answer). ${row.agree ? 'The two agree; read one pair cold, then hot, all the same.' : 'They don’t agree with each other: read one pair cold, then hot.'}`,
  ];
}
