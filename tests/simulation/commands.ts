/** One thing that is entered of a call, as the body that its route takes; ids are those of the build in memory. */
export type Command =
  | { readonly enters: 'spec'; readonly body: { readonly spec: object } }
  | { readonly enters: 'arm'; readonly body: { readonly name: string; readonly ratioStamp: string } }
  | {
      readonly enters: 'place';
      readonly body: {
        readonly armId: string;
        readonly cylinder: number;
        readonly valve: 'intake' | 'exhaust';
      };
    }
  | { readonly enters: 'set-up'; readonly body: object }
  | { readonly enters: 'put-right'; readonly setUpId: string; readonly body: object }
  | { readonly enters: 'reading'; readonly setUpId: string; readonly body: object }
  | { readonly enters: 'strike'; readonly readingId: string; readonly body: { readonly reason: string } }
  | { readonly enters: 'sheet'; readonly body: object }
  | { readonly enters: 'answer'; readonly body: object };
