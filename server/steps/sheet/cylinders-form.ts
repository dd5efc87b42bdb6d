import type { CallContext } from '../../call/context.ts';
import type { PageForm } from '../../call/forms.ts';
import type { OtherSide } from '../../call/spec/spec-form.ts';
import { specForm } from '../../call/spec/spec-form.ts';
import { specFormPost } from '../../call/spec/spec-form-post.ts';

const PATH = '/spec/cylinders';

/** How many cylinders there are: with it every valve has its row. */
export const cylindersForm = (context: CallContext, other?: OtherSide): PageForm =>
  specForm({
    name: 'cylinders',
    action: `${context.base}${PATH}`,
    groups: [
      {
        legend: 'For a table of every valve',
        fields: [{ path: 'engine.cylinders', label: 'Cylinders' }],
      },
    ],
    spec: context.build.spec,
    revision: context.build.revision,
    other,
    bench: context.side === 'bench',
    alone: false,
    part: 'sheet',
  });

export const keepCylinders = specFormPost({
  path: PATH,
  reason: 'number of cylinders',
  to: () => ({ step: 'sheet' }),
});
