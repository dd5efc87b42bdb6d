import type { ComponentOf } from '../../views/parts/components.ts';
import type { DrawingData } from '../../views/parts/drawing.examples.ts';
import type { FactsData } from '../../views/parts/facts.examples.ts';
import type { NoticeData } from '../../views/parts/notice.examples.ts';
import type { TableData } from '../../views/parts/table.examples.ts';

export const tableComponent = (data: TableData): ComponentOf<'/parts/table'> => ({
  template: '/parts/table',
  data,
});

export const factsComponent = (data: FactsData): ComponentOf<'/parts/facts'> => ({
  template: '/parts/facts',
  data,
});

export const drawingComponent = (data: DrawingData): ComponentOf<'/parts/drawing'> => ({
  template: '/parts/drawing',
  data,
});

export const noticeComponent = (
  text: string,
  more: Omit<NoticeData, 'text'> = {},
): ComponentOf<'/parts/notice'> => ({ template: '/parts/notice', data: { text, ...more } });

/** What must not be overlooked, with the word that says so. */
export const cautionComponent = (text: string): ComponentOf<'/parts/notice'> =>
  noticeComponent(text, { kind: 'caution' });
