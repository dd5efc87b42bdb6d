import type { Component } from '../../../views/parts/components.ts';
import type { RankingDetail } from '../../mechanics/assessment/part/detail.ts';
import { factsComponent } from '../../web/components.ts';

/** What the family that stands first means for stud, cover and guide plate, each with its chance. */
export const impliedComponents = ({ implied }: RankingDetail): Component[] =>
  implied.length === 0
    ? []
    : [factsComponent({ items: implied.map(({ title, sentence }) => ({ label: title, value: sentence })) })];
