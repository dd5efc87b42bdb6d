import { inSpoken } from '../../../shared/quantities/authored.ts';
import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { Answer, Registered } from '../../compute/registry.ts';
import { answerComponents } from '../../compute-forms/answer/answer-components.ts';
import { drawingsOf } from '../../drawings/registry.ts';
import type { Working } from '../../records/workings/workings.ts';
import { cautionComponent, drawingComponent, factsComponent, noticeComponent } from '../../web/components.ts';
import { momentText } from '../../web/dates.ts';
import { foldComponent } from '../fold.ts';
import { saidComponents } from '../report-parts.ts';
import { NOT_HELD } from './told.ts';

function isAnswer(value: unknown): value is Answer {
  return (
    typeof value === 'object' &&
    value !== null &&
    'result' in value &&
    'assumptions' in value &&
    'cautions' in value
  );
}

/** The words of an answer that say which way to turn something. */
const SAYS_WHICH_WAY = ['direction'];

/** An answer as it is shown while nothing is turned: its figures stay on record, which way to turn does not. */
export function withoutWay(result: unknown): unknown {
  if (typeof result !== 'object' || result === null || Array.isArray(result)) return result;
  return Object.fromEntries(Object.entries(result).filter(([name]) => !SAYS_WHICH_WAY.includes(name)));
}

/**
 * What was kept last of a computation: who and when, the drawing to scale, the answer, and its cautions. While it may
 * not be turned, what tells how it is turned or set waits: drawing, direction and cautions. Of one that was made with
 * other figures than the build has now nothing that came out is shown; of one that hangs on an open question nothing is
 * drawn or set large.
 */
export function keptComponents(
  working: Working,
  each: Registered,
  mayTurn: boolean,
  { outdated, open = false }: { readonly outdated?: string; readonly open?: boolean } = {},
): Component[] {
  if (!isAnswer(working.answer)) return [];
  const kept = working.answer;
  const answer = mayTurn ? kept : { ...kept, result: withoutWay(kept.result) };
  const facts = factsComponent({
    block: true,
    items: [
      { label: 'Kept', value: each.title, note: `line ${working.seq}` },
      { label: 'Who, when', value: `${working.by}, ${momentText(working.at)}` },
      { label: 'Build revision', value: String(working.revision) },
    ],
  });
  if (outdated !== undefined) return [facts, noticeComponent(`${NOT_HELD} ${outdated}`)];
  return [
    facts,
    ...(mayTurn && !open
      ? drawingsOf(each, working.inputs, answer.result, spokenUnits()).map(drawingComponent)
      : []),
    ...answerComponents(
      each,
      { body: working.inputs, answer },
      { uncertainty: 0, limitSource: 'the default of the limits table' },
    ).filter(({ template }) => !open || template !== '/parts/result'),
    ...(mayTurn && answer.assumptions.length > 0
      ? [
          foldComponent(
            'kept-assumes',
            'What it assumes',
            saidComponents('It assumes', answer.assumptions.map(inSpoken)),
          ),
        ]
      : []),
    ...(mayTurn ? answer.cautions.map(inSpoken).map(cautionComponent) : []),
  ];
}
