import { demoCatalogueFile } from '../../server/records/catalogue/demo.ts';
import { sendJson } from './call.ts';
import type { Person, TestService } from './service.ts';

/** Loads the invented catalogue into the shop of a person. */
export async function loadDemoCatalogue(service: TestService, person: Person): Promise<void> {
  const csv = demoCatalogueFile();
  const loaded = await sendJson(service, person.bearer, 'POST', '/api/v1/catalogue/loads', { csv });
  if (loaded.status !== 200) throw new Error(`no catalogue: ${loaded.status} ${loaded.text}`);
}

/** An invented part of that catalogue, as a caliper reads it. */
export const SORREL = [
  { kind: 'hole-across-trunnion', size: '.4355 in' },
  { kind: 'hole-across-trunnion', size: '.4362 in', place: 'turned a quarter turn' },
  { kind: 'width-across-trunnion', size: '1.600 in' },
  { kind: 'roller-diameter', size: '.496 in' },
  { kind: 'body-width', size: '.841 in' },
  { kind: 'pivot-to-tip', size: '36.9 mm' },
  { kind: 'pivot-to-cup', size: '.911 in' },
  { kind: 'rings', word: 'visible' },
  { kind: 'tip', word: 'roller' },
  { kind: 'mount', word: 'stud' },
];
