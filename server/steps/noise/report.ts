import type { Component } from '../../../views/parts/components.ts';
import { answeredText } from '../../call/answered-text.ts';
import type { CallContext } from '../../call/context.ts';
import { sectionComponent } from '../../call/report-parts.ts';
import { tableComponent } from '../../web/components.ts';
import { momentText } from '../../web/dates.ts';
import { candidatesTable, checksTable, factsTable } from './candidates-table.ts';

/** What was asked about noise, with each answer that counts and who gave it. */
function answersTable({ assessment, answers }: CallContext): Component[] {
  const told = assessment.questions.flatMap((question) => {
    const kept = answers.find(({ id }) => id === question.answered?.entryId);
    return question.step !== 'noise' || kept === undefined ? [] : [{ question, kept }];
  });
  if (told.length === 0) return [];
  return [
    tableComponent({
      caption: 'What was asked, and what was answered',
      columns: [{ label: 'Asked' }, { label: 'Answered' }],
      rows: told.map(({ question, kept }) => ({
        cells: [
          question.ask,
          { text: answeredText(question, kept), why: `${kept.by}, ${momentText(kept.at)}` },
        ],
      })),
    }),
  ];
}

/** The answers, the candidates with their evidence, and what would tell them apart. */
export function noiseReport(context: CallContext): Component[] {
  const { noise } = context.assessment.details;
  const begun = noise.candidates.some((each) => each.for.length + each.against.length > 0);
  if (!noise.active || !begun) return [];
  return [
    sectionComponent('Noise and failure', [
      ...answersTable(context),
      ...[...factsTable(noise), candidatesTable(noise), ...checksTable(noise)].map(tableComponent),
    ]),
  ];
}
