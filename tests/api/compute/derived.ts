/** One answer worked out apart from the service, in inches, pounds and degrees. */
export interface Derived {
  readonly name: string;
  readonly body: { readonly [key: string]: unknown };
  readonly result: unknown;
}
export const RAD = Math.PI / 180;
