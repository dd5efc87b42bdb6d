import { HOSTILE, type Part } from './part.ts';

export interface FileData {
  readonly id: string;
  readonly label: string;
  readonly name?: string;
  readonly hint?: string;
  readonly error?: string;
  readonly accept: string;
}

export const file: Part<'/parts/file'> = {
  name: 'file',
  title: 'File',
  purpose: 'Takes a photograph from the phone or the disk.',
  template: '/parts/file',
  examples: [
    {
      title: 'Empty',
      data: {
        id: 'file-empty',
        label: 'Photograph',
        hint: 'JPEG, PNG or WebP, 12 MB at the most.',
        accept: 'image/*',
      },
    },
    {
      title: 'Refused',
      data: {
        id: 'file-error',
        label: 'Photograph',
        accept: 'image/*',
        error: 'Photograph is no photograph',
      },
    },
    {
      title: 'Hostile text',
      data: { id: 'file-hostile', label: HOSTILE, accept: 'image/*', hint: HOSTILE, error: HOSTILE },
    },
  ],
};
