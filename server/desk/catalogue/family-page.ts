import { familyFacts } from '../../call/family-words.ts';
import type { Tx } from '../../database/database.ts';
import { partDrawing } from '../../drawings/part.ts';
import { getFamily } from '../../records/catalogue/families.ts';
import type { PageRequest } from '../../web/page-request.ts';
import type { Page } from '../../web/pages/render.ts';

/** One family of the catalogue: what it is made for, beside the drawing that says what each size means. */
export async function familyPage(tx: Tx, req: PageRequest): Promise<Page> {
  const family = await getFamily(tx, req.principal, req.params.familyId ?? '');
  return {
    template: 'plain',
    title: family.name,
    place: '/catalogue',
    data: {
      title: family.name,
      sections: [
        { template: '/parts/facts', data: { block: true, items: familyFacts(family) } },
        {
          template: '/parts/drawing',
          data: partDrawing('family-drawing', undefined, { ringless: family.features.rings === 'none' }),
        },
        {
          template: '/parts/notice',
          data: {
            text: 'Sizes are what the part is made for. A reading comes out a little smaller or larger.',
          },
        },
        { template: '/parts/button', data: { label: 'Back to the catalogue', href: '/catalogue' } },
      ],
    },
  };
}
