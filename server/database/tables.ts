import type {
  ArmMarkedTable,
  ArmPlacementTable,
  ArmTable,
  BuildRevisionTable,
  BuildTable,
} from './tables/builds.ts';
import type { BuilderSessionTable, CallTable, PresenceTable, ShareLinkTable } from './tables/calls.ts';
import type { GapScanTable } from './tables/gap-scans.ts';
import type { LashLogTable, TipMarkTable } from './tables/marks-and-lash.ts';
import type { AnswerTable, ReadingTable, SetUpStatementTable, SetUpTable } from './tables/measuring.ts';
import type { PartFamilyTable, PartInHandTable, PartReadingTable } from './tables/parts.ts';
import type {
  ApiKeyTable,
  FirstAdministratorLinkTable,
  SecurityEventTable,
  ShopTable,
  StaffDeviceTable,
  StaffSessionTable,
  StaffTable,
} from './tables/people.ts';
import type {
  EventTable,
  IdempotencyTable,
  NoteTable,
  PhotographTable,
  WorkingTable,
} from './tables/record.ts';
import type { ShopLimitTable, ValveReadingTable } from './tables/sheet.ts';

/** Every table by its name. */
export interface Tables {
  shop: ShopTable;
  staff: StaffTable;
  staff_session: StaffSessionTable;
  api_key: ApiKeyTable;
  security_event: SecurityEventTable;
  staff_device: StaffDeviceTable;
  idempotency: IdempotencyTable;
  first_administrator_link: FirstAdministratorLinkTable;
  build: BuildTable;
  build_revision: BuildRevisionTable;
  call: CallTable;
  share_link: ShareLinkTable;
  builder_session: BuilderSessionTable;
  arm: ArmTable;
  arm_marked: ArmMarkedTable;
  arm_placement: ArmPlacementTable;
  set_up: SetUpTable;
  set_up_statement: SetUpStatementTable;
  reading: ReadingTable;
  answer: AnswerTable;
  note: NoteTable;
  event: EventTable;
  part_family: PartFamilyTable;
  part_reading: PartReadingTable;
  part_in_hand: PartInHandTable;
  presence: PresenceTable;
  working: WorkingTable;
  photograph: PhotographTable;
  shop_limit: ShopLimitTable;
  valve_reading: ValveReadingTable;
  tip_mark: TipMarkTable;
  gap_scan: GapScanTable;
  lash_log: LashLogTable;
}
