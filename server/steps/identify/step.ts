import { identifyPart, type PartIdentification } from '../../assessment/identification/identification.ts';
import { also, mustFor } from '../../call/needs.ts';
import { defineStep } from '../../call/step.ts';
import { NO_ROWS } from '../../call/worksheet-rows.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import { catalogueOf } from '../../records/whole-build/build-record.ts';
import { partCorrection } from './correction.ts';
import { partForms } from './forms.ts';
import { foundOfPart } from './found.ts';
import { identifyPage } from './identify-page.ts';
import { nextOfPart, partReport } from './report.ts';
import { partItems } from './takeover.ts';
import { PART_TOLD } from './tape-text.ts';

/** What a part in the hand may be, from what is measured and read of it. */
export const identifyStep = defineStep({
  name: 'identify',
  key: '7',
  words: {
    title: 'Find out what the part is',
    link: 'Part in the hand',
    say: 'Is there a number on the arm? Which, word for word? Then the caliper: the hole first, then the width over the trunnion.',
    how: 'Clean the part. Measure one thing at a time, as the drawing shows it; each reading is kept.',
  },
  catalogue: true,
  load: ({ context: { record } }): PartIdentification => identifyPart(record, catalogueOf(record)),
  needs: (context) => {
    const asked = mustFor(context, 'identify');
    const standing = stillStanding(context.partReadings);
    const read = (...kinds: readonly string[]) => standing.filter(({ kind }) => kinds.includes(kind)).length;
    const holes = read('hole-across-trunnion');
    return [
      asked(`hole across the trunnion, both ways: ${Math.min(holes, 2)} of 2`, holes >= 2),
      asked('width across the trunnion', read('width-across-trunnion') > 0),
      asked('rings', read('rings') > 0),
      also('roller, body and arms', read('roller-diameter', 'body-width', 'pivot-to-tip') > 2),
      also('marks, each word for word', read('ratio-stamp', 'other-number', 'box-label') > 0),
    ];
  },
  page: (found, input) => identifyPage(found, input),
  forms: partForms,
  corrections: [partCorrection],
  told: PART_TOLD,
  findings: (found, context) => {
    const next = found.standing.length === 0 ? undefined : nextOfPart(context, found);
    return {
      found: foundOfPart(found),
      notKnown: [],
      stop: [],
      next: next === undefined ? [] : [next.replace(/^Next: (.)/, (_, first: string) => first.toUpperCase())],
    };
  },
  cautions: () => [],
  report: (found, context) => [{ name: 'part', components: partReport(context, found) }],
  takeover: (found, context) => partItems(context, found),
  worksheet: () => NO_ROWS,
});
