import { Failure } from '../problems/failure.ts';

export type Role = 'desk' | 'quality' | 'administrator';
export const ROLES: readonly Role[] = ['desk', 'quality', 'administrator'];

/** Who makes a request, resolved from a cookie, a link or a key; never from what the request says of itself. */
export type Principal = {
  /** The address that the request came from. */
  readonly from?: string;
} & (
  | {
      readonly kind: 'staff';
      readonly shopId: string;
      readonly id: string;
      readonly name: string;
      readonly roles: readonly Role[];
      readonly sessionId: string;
      readonly shortcuts: boolean;
    }
  | {
      readonly kind: 'builder';
      readonly shopId: string;
      /** The share link. */
      readonly id: string;
      readonly name: string;
      readonly buildId: string;
      readonly callId: string;
    }
  | {
      readonly kind: 'program';
      readonly shopId: string;
      readonly id: string;
      readonly name: string;
      readonly scopes: readonly string[];
    }
);

/** Desk work: staff with the desk or administrator role, or a program; `write` asks a key for that scope. */
export function requireDesk(principal: Principal, access: 'read' | 'write'): void {
  if (principal.kind === 'staff') {
    if (access === 'read' || principal.roles.includes('desk') || principal.roles.includes('administrator'))
      return;
  }
  if (principal.kind === 'program' && principal.scopes.includes(access)) return;
  if (principal.kind === 'builder')
    throw new Failure(
      'not-found',
      'only the desk does this; with a link there is nothing here to do it with',
    );
  throw new Failure('not-permitted', 'this takes the desk role, or a key with the scope for it');
}

export function requireStaff(principal: Principal): Extract<Principal, { kind: 'staff' }> {
  if (principal.kind === 'staff') return principal;
  throw new Failure(
    principal.kind === 'builder' ? 'not-found' : 'not-permitted',
    'only a signed-in person may do this',
  );
}

export function requireAdministrator(principal: Principal): Extract<Principal, { kind: 'staff' }> {
  const staff = requireStaff(principal);
  if (!staff.roles.includes('administrator')) {
    throw new Failure('not-permitted', 'this takes the administrator role');
  }
  return staff;
}

/** A builder's link opens its own build alone; for any other it is as if the build did not exist. */
export function requireBuild(principal: Principal, buildId: string, access: 'read' | 'write'): void {
  if (principal.kind === 'builder') {
    if (principal.buildId !== buildId) throw new Failure('not-found', 'no such build');
    return;
  }
  requireDesk(principal, access);
}

/** The author columns of a row. */
export function author(principal: Principal): { by_kind: string; by_id: string; by_name: string } {
  return { by_kind: principal.kind, by_id: principal.id, by_name: principal.name };
}
