/**
 * In and out: calendar files (RFC 5545), tables (RFC 4180), telematics feeds (ISO 15143-3 and its forerunner), bus frames
 * (SAE J1939), and the service record as a page or a table. Texts in, texts out; no file is touched.
 *
 * The public entry `duewright/exchange`.
 */
export { calendarUid, writeCalendar } from './exchange/calendar-file.js';
export { parseFrame } from './exchange/can-frame.js';
export { readCsv, writeCsv } from './exchange/csv.js';
export { dueCalendar } from './exchange/due-calendar.js';
export { coolantTemperature, engineHours, engineReading } from './exchange/engine-frames.js';
export { entriesFromCsv, entriesToCsv } from './exchange/entries-csv.js';
export { readFleetJson, readFleetXml } from './exchange/fleet-feed.js';
export { snapshotReadings } from './exchange/meter-snapshot.js';
export { serviceRecordCsv } from './exchange/service-record-csv.js';
export { serviceRecordPage } from './exchange/service-record-page.js';
export { serviceRecord } from './exchange/service-record.js';

export type { CalendarItem, CalendarOptions } from './exchange/calendar-file.js';
export type { CanFrame } from './exchange/can-frame.js';
export type { CsvFormat, CsvText } from './exchange/csv.js';
export type { ExpectedDays } from './exchange/due-calendar.js';
export type { EngineTarget, Refusal, Signal } from './exchange/engine-frames.js';
export type { EntriesFromCsv } from './exchange/entries-csv.js';
export type { Feed, FeedMeter, MachineNames, MeterSnapshot, SnapshotTarget } from './exchange/meter-snapshot.js';
export type { EditionInUse, RecordedWork, ServiceRecord, Timing } from './exchange/service-record.js';
