import { z } from 'zod';
import { choice } from '../../../shared/schemas/fields.ts';
import { words } from '../../../shared/schemas/texts.ts';
import { keysOf } from '../../../shared/schemas/words.ts';

/** What a photograph can show. */
export const SHOWS = {
  'ratio-stamp': 'What looks like a ratio on the part',
  'other-number': 'Another number or letter on the part',
  'box-label': 'The box or its label',
  part: 'The part',
  'tip-mark': 'The tip mark',
  dial: 'The dial',
  'something-else': 'Something else',
} as const;

export const newPhotograph = z.strictObject({
  shows: choice(keysOf(SHOWS), 'what the photograph shows'),
  caption: words('what to look at', 300).default(''),
  readingId: z.uuid().optional().meta({ description: 'the reading it proves' }),
  armId: z.uuid().optional().meta({ description: 'the arm it shows' }),
});
