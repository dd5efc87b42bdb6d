import { expect, test } from 'vitest';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { workingsOf } from '../../tools/record/kept-workings.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { PLAIN } from './plain-build.ts';

const assess = assessAsTold('sum-against-card');

/* Feelers come in thousandths: common practice, no published source. One that is tuned further is meant, once somebody says so. */
const card = { ...PLAIN.card, intake: { ...PLAIN.card.intake, lash: 0.018 * IN } };
const wanting = (lashWanted: string) => {
  const inputs = {
    thread: '7/16-20',
    mount: 'stud-nut',
    ratio: 1.6,
    lifter: 'solid',
    lashFound: '.026 in',
    lashWanted,
  };
  const said = assess({ ...PLAIN, card, workings: workingsOf([['adjuster', inputs]]) });
  return {
    weights: said.questions.filter(({ code }) => code === 'sum-unlikely').map(({ weight }) => weight),
    lacks: said.quantities.find(({ id }) => id === 'working:turns')?.lacks,
  };
};

test.each([
  ['the card’s own is not asked', '.018 in', [], 0],
  ['a thousandth beside it is the next feeler', '.019 in', [], 0],
  ['one that it may be tuned to is asked before any turn is told', '.020 in', ['strong'], 1],
  ['one that is far off too', '.023 in', ['strong'], 1],
] as const)('%s', (_, lashWanted, weights, lacking) => {
  const { weights: asked, lacks } = wanting(lashWanted);
  expect(asked).toEqual(weights);
  expect(lacks).toHaveLength(lacking);
});
