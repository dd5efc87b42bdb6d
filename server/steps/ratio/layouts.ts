import type { Component } from '../../../views/parts/components.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { foldComponent } from '../../call/fold.ts';
import { sentenceComponents } from '../../call/headline.ts';
import { type Cards, oneAtATime } from '../../call/question-form.ts';
import { ratioName } from '../../call/ratio-text.ts';
import type { ShownSetUp } from '../../call/shown-set-up.ts';
import { type SaidOfSetUp, toldOf } from '../../mechanics/assessment/ratio/read/said-of-set-up.ts';
import { turningCaution } from '../../mechanics/cam/caution.ts';
import { cautionComponent, factsComponent, tableComponent } from '../../web/components.ts';
import { explanationComponents } from './explanation.ts';
import { groundsComponents, resultOf } from './figures.ts';
import { indicatorComponents } from './indicator-place.ts';
import type { NextReading } from './next-reading.ts';
import { passesTable } from './passes-table.ts';
import { setUpFacts } from './set-up-facts.ts';
import { throughLiftComponents } from './through-lift.ts';

/** Everything of the step, made once and laid out by its side. */
interface Parts {
  readonly found: ShownSetUp;
  readonly said: SaidOfSetUp;
  readonly entry: readonly Component[];
  readonly dial: readonly Component[];
  readonly cards: Cards;
  readonly next: NextReading;
}

const sideBySide = (...slots: readonly Component[]): Component => ({
  template: '/pages/call/side-by-side',
  data: { slots },
});

const stopped = ({ assessment }: CallContext): boolean => assessment.stop.length > 0;

const saidComponents = ({ said }: Parts): Component[] => sentenceComponents(toldOf(said));

/** The figure of this set-up, or what it lacks. */
const figureComponent = (context: CallContext, { found }: Parts): Component => ({
  template: '/parts/result',
  data: resultOf(context, found),
});

/** At the desk the figure stands beside what is said of the arm on this valve; the answer goes above the page. */
function besideFigure(context: CallContext, parts: Parts): Component[] {
  const figure = figureComponent(context, parts);
  const [lead, ...more] = saidComponents(parts);
  const beside = [...more, ...cautionComponents(context, parts.found)];
  return [
    ...(lead === undefined ? [] : [lead]),
    beside.length === 0
      ? figure
      : sideBySide(figure, { template: '/pages/call/column', data: { slots: beside } }),
  ];
}

function passesComponent({ base }: CallContext, found: ShownSetUp): Component {
  const caption = `Passes of set-up ${found.setUp.number}, ${valveName(found.setUp)}`;
  return tableComponent(passesTable(found, caption, ({ id }) => `${base}/readings/${id}`));
}

function groundsFolds(context: CallContext, { found, said }: Parts): Component[] {
  const grounds = foldComponent(
    'grounds',
    `Figures of set-up ${found.setUp.number}, each nominal, and where the ± comes from`,
    groundsComponents(found, said.quantities),
  );
  const through = foldComponent('through', 'Through the lift', throughLiftComponents(context, found));
  return [grounds, through];
}

/** What the figure may not be taken for stays in sight; how the engine is turned is said above the entry, once. */
const cautionComponents = (context: CallContext, { detail }: ShownSetUp): Component[] =>
  stopped(context)
    ? []
    : detail.cautions.filter((caution) => caution !== turningCaution).map(cautionComponent);

function whereFold(context: CallContext, found: ShownSetUp): Component[] {
  const drawn = indicatorComponents(context, found);
  return drawn.length === 0 ? [] : [foldComponent('where', 'Where the indicator sits', drawn)];
}

const methodFold = (found: ShownSetUp): Component =>
  foldComponent('method', `How set-up ${found.setUp.number} is read`, [
    factsComponent({ block: true, items: setUpFacts(found) }),
  ]);

const explained = ({ said: { explanation } }: Parts): Component[] =>
  explanation === undefined ? [] : explanationComponents(explanation);

/** What would explain the readings, one tap away: the answer above says what counts of it. */
function whyFold(parts: Parts): Component[] {
  const why = [...explained(parts), ...parts.next.outcomes];
  return why.length === 0 ? [] : [foldComponent('why', 'What would have to be true, and how likely', why)];
}

const passesFold = (context: CallContext, found: ShownSetUp): Component =>
  foldComponent('passes', `Every pass, ${found.readings.length} so far`, [passesComponent(context, found)]);

/** At the desk the dial stands beside the entry, to be told over the phone. */
function besideDial(entry: readonly Component[], dial: readonly Component[]): Component[] {
  const form = entry.at(-1);
  if (form === undefined || dial.length === 0) return [...entry];
  return [...entry.slice(0, -1), sideBySide(form, ...dial)];
}

/** At the desk the answer stands open, what it rests on below it. */
export function deskLayout(context: CallContext, parts: Parts): Component[] {
  const { found, entry, dial, cards, next } = parts;
  return [
    ...besideDial(entry, dial.length > 0 || stopped(context) ? dial : indicatorComponents(context, found)),
    ...besideFigure(context, parts),
    ...oneAtATime(cards),
    ...next.slots,
    ...whyFold(parts),
    passesFold(context, found),
    ...groundsFolds(context, parts),
    ...(stopped(context) || dial.length === 0 ? [] : whereFold(context, found)),
    methodFold(found),
  ];
}

/** At the bench one thing is asked at a time, and what the answer rests on is one tap away. */
export function benchLayout(context: CallContext, parts: Parts): Component[] {
  const { found, entry, dial, cards, next } = parts;
  const isFirst = dial.length === 0 && !stopped(context);
  return [
    ...entry,
    ...(isFirst ? indicatorComponents(context, found) : dial),
    ...saidComponents(parts),
    figureComponent(context, parts),
    ...cautionComponents(context, found),
    ...oneAtATime(cards),
    ...next.slots,
    foldComponent('behind', 'Passes, figures and how it is read', [
      ...whyFold(parts),
      passesFold(context, found),
      ...groundsFolds(context, parts),
      ...(isFirst || stopped(context) ? [] : whereFold(context, found)),
      methodFold(found),
    ]),
  ];
}

/** The way to put this set-up right, to the others, and to a new one while the engine may be turned. */
export function setUpsComponent(
  context: CallContext,
  all: readonly ShownSetUp[],
  chosen: ShownSetUp,
): Component {
  const at = `${context.base}/steps/ratio`;
  const others = all.filter(({ setUp }) => setUp.id !== chosen.setUp.id);
  return {
    template: '/pages/call/actions',
    data: {
      buttons: [
        ...(stopped(context) ? [] : [{ label: 'Start another set-up', href: `${at}?new=yes`, key: 'u' }]),
        {
          label: `Put set-up ${chosen.setUp.number} right`,
          href: `${context.base}/set-ups/${chosen.setUp.id}`,
        },
        ...others.map(({ setUp, detail }) => ({
          label: `Set-up ${setUp.number}: ${valveName(setUp)}, ${ratioName(detail.setUp.spring).toLowerCase()}`,
          href: `${at}?set-up=${setUp.id}`,
        })),
      ],
    },
  };
}
