import type { Binaries } from './binaries.ts';
import type { Folders } from './folders.ts';

/** All that is known of one cluster once its folders, programs and password are there. */
export interface Cluster {
  readonly folders: Folders;
  readonly binaries: Binaries;
  readonly password: string;
  /** Settings beyond the project's own, as `name=value`; throw-away servers give up durability here. */
  readonly settings: readonly string[];
  /** The name under which this process is counted among those that use the server. */
  readonly presence: string;
  readonly log: (message: string) => void;
}

/** A server that runs and takes connections. */
export interface Running {
  readonly pid: number;
  readonly port: number;
  /** True when this process found it running. */
  readonly adopted: boolean;
}
