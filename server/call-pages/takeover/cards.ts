import { CALLER_ROLES, CONTACT, ENGINE_STATES, GOALS } from '../../../shared/schemas/words.ts';
import type { Card, CardItem } from '../../../views/pages/pages.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { STEP_NAMES, STEPS } from '../../call/steps.ts';
import type { Photograph } from '../../records/photographs/photographs.ts';
import { promiseState } from '../../steps/notes/notes-step.ts';
import { dayText, momentText } from '../../web/dates.ts';
import { needsOf, nextStep } from '../needs.ts';
import { nextSentences } from '../report/next.ts';
import type { ReportData } from '../report/report-data.ts';
import { isMark } from '../report/sections/identified.ts';
import { provesText, showsText } from '../report/sections/photographs.ts';
import { gapLines, oddLines, ratioLines } from '../report/summary.ts';
import { sentence } from '../tape-text.ts';

/** A card with its lines, or with what is said where there is none. */
export const card = (title: string, items: readonly CardItem[], none: string): Card => ({
  title,
  items: items.length === 0 ? [{ text: none }] : items,
});

export function callerCard({ call, build }: CallContext): Card {
  const role = call.callerRole === '' ? '' : sentence(CALLER_ROLES, call.callerRole);
  return card(
    'Caller and goal',
    [
      {
        label: call.callerName || 'Name not said',
        text: [role, call.callBack || 'no call-back'].filter((each) => each !== '').join(', '),
      },
      { label: 'Goal', text: sentence(GOALS, call.goal) },
      {
        label: 'Engine',
        text: `${sentence(ENGINE_STATES, call.engineState)}. ${sentence(CONTACT, call.contact)}.`,
      },
      {
        label: 'Build',
        text: `${build.label}, revision ${build.revision}`,
        note: `opened ${dayText(call.openedAt)}`,
      },
    ],
    '',
  );
}

/** What the answer still waits for, step by step. */
export function missingCard(context: CallContext): Card {
  const items = STEP_NAMES.filter((step) => step !== 'notes').flatMap((step) =>
    needsOf(step, context)
      .filter((need) => need.must && !need.have)
      .map(({ text }, index) => ({ label: index === 0 ? `${STEPS[step].link}:` : '', text })),
  );
  return card('What is missing', items, 'Nothing that the answer waits for.');
}

export function nextCard(report: ReportData): Card {
  const next = nextStep(report.context);
  return card(
    'Next',
    [
      ...nextSentences(report).map((text) => ({ text })),
      {
        label: 'Step',
        text: STEPS[next.step].link,
        href: `${report.context.base}/steps/${next.step}`,
      },
    ],
    '',
  );
}

export function promisesCard({ notes }: CallContext): Card {
  const open = notes.filter((note) => note.kind === 'promise' && note.doneAt === undefined);
  return card(
    'Open promises, owner, date',
    open.map((note) => ({ text: note.body, note: promiseState(note) })),
    'None.',
  );
}

/** Advice and notes: what was said, by whom, and on which figures and limits. */
export function saidCard(report: ReportData): Card {
  const said = report.context.notes.filter((note) => note.kind !== 'promise' || note.doneAt !== undefined);
  const limits = report.consequences.flatMap((found) => {
    const judged = found.limits.map(({ title, value }) => `${title.toLowerCase()} ${value.readAs}`);
    return judged.length === 0 ? [] : [{ label: 'Limits in force', text: judged.join('; ') }];
  });
  return card(
    'What was said, by whom, on which limits',
    [
      ...said.map((note) => ({
        label: note.kind === 'note' ? '' : `${note.kind}:`,
        text: note.body,
        note: [note.restsOn, `${note.by}, ${momentText(note.at)}`].filter((each) => each !== '').join('; '),
      })),
      ...limits.slice(0, 1),
    ],
    'Nothing yet.',
  );
}

export const foundCard = (report: ReportData): Card =>
  card(
    'Found so far',
    [...ratioLines(report), ...oddLines(report), ...gapLines(report)].map((text) => ({ text })),
    'Nothing yet.',
  );

const mark = (text: string) => (text === '' ? 'not said' : `“${text}”`);

/** Marks word for word, and which arm is on which valve now. */
export function marksCard({ arms, now, partReadings }: CallContext): Card {
  const seats = new Map(now.map((placement) => [placement.armId, valveName(placement)]));
  const standing = partReadings.filter(
    (each) => each.replacedBy === undefined && !each.struck && isMark(each),
  );
  const named = [...arms].sort((a, b) => a.name.localeCompare(b.name));
  return card(
    'Marks word for word; arms and their valves now',
    [
      ...named.map((arm) => ({
        label: `${arm.name}, ${seats.get(arm.id) === undefined ? 'on no valve' : `on ${seats.get(arm.id)}`}:`,
        text: `ratio stamp ${mark(arm.ratioStamp)}, other number ${mark(arm.otherNumber)}, box label ${mark(arm.boxLabel)}`,
      })),
      ...standing.map((each) => ({
        label: 'Part in the hand:',
        text: `${each.kind.replaceAll('-', ' ')} “${each.readAs}”`,
        ...(each.place === '' ? {} : { note: each.place }),
      })),
    ],
    'No arm on record yet.',
  );
}

export function swapsCard({ arms, placements }: CallContext): Card[] {
  const names = new Map(arms.map((arm) => [arm.id, arm.name]));
  if (placements.length <= arms.length) return [];
  const items = placements.map((each) => ({
    label: `${each.seq}`,
    text: `${names.get(each.armId) ?? 'an arm'} on ${valveName(each)}`,
    ...(each.reason === '' ? {} : { note: each.reason }),
  }));
  return [card('Swaps, in order', items, '')];
}

const MOST_PHOTOGRAPHS = 6;

export function photographsCard(context: CallContext, photographs: readonly Photograph[]): Card {
  const left = photographs.length - MOST_PHOTOGRAPHS;
  return card(
    `Photographs: ${photographs.length}`,
    [
      ...photographs.slice(-MOST_PHOTOGRAPHS).map((each) => ({
        text: each.caption === '' ? showsText(each) : each.caption,
        href: `${context.base}/photographs/${each.id}`,
        note: provesText(context, each),
      })),
      ...(left > 0 ? [{ text: `${left} more`, href: `${context.base}/photographs` }] : []),
    ],
    'No photograph yet.',
  );
}
