import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readFleetJson, readFleetXml } from '../../../src/adapters/exchange/fleet-feed.js';
import { hoursOfDuration } from '../../../src/adapters/exchange/iso-duration.js';
import { localMoment } from '../../../src/adapters/exchange/local-moment.js';
import { snapshotReadings } from '../../../src/adapters/exchange/meter-snapshot.js';

// Machines and numbers are invented; the elements are those of ISO/TS 15143-3.
const ISO = `<?xml version="1.0" encoding="utf-8"?>
<Fleet xmlns="urn:example:iso-15143-3" version="1" snapshotTime="2026-05-12T06:31:00Z">
  <Equipment>
    <EquipmentHeader><OEMName>Tarn</OEMName><Model>55</Model><EquipmentID>orchard 1</EquipmentID><SerialNumber>0001234</SerialNumber></EquipmentHeader>
    <CumulativeOperatingHours datetime="2026-05-12T06:30:00Z"><Hour>8376.20</Hour></CumulativeOperatingHours>
    <CumulativeIdleHours datetime="2026-05-12T06:30:00Z"><Hour>1200</Hour></CumulativeIdleHours>
    <Distance datetime="2026-05-12T06:30:00Z"><OdometerUnits>mile</OdometerUnits><Odometer>100</Odometer></Distance>
  </Equipment>
  <Equipment>
    <EquipmentHeader><SerialNumber>9</SerialNumber></EquipmentHeader>
    <CumulativeOperatingHours><Hour>12.5</Hour><datetime>2026-05-11T22:30:00Z</datetime></CumulativeOperatingHours>
  </Equipment>
</Fleet>`;
const AEMP = `<Fleet><Equipment><EquipmentHeader><SerialNumber>0001234</SerialNumber></EquipmentHeader>
  <CumulativeOperatingHours datetime="2010-05-12T06:30:00Z"><Hour>PT8376H12M</Hour></CumulativeOperatingHours></Equipment></Fleet>`;
const JSON_FEED = JSON.stringify({
  equipment: [
    { equipmentHeader: { serialNumber: '0001234' }, cumulativeOperatingHours: { datetime: '2026-05-12T06:30:00Z', hour: 8376.2 } },
  ],
});
const target = { machine: '0001234', meters: new Map([['operating-hours', 'engine'] as const]) };

describe('meters from a feed', () => {
  it.each([
    ['ISO 15143-3', readFleetXml(ISO), '2026-05-12'],
    ['AEMP 1.2', readFleetXml(AEMP), '2010-05-12'],
    ['JSON', readFleetJson(JSON_FEED), '2026-05-12'],
  ])('%s: 8376.2 h', (_, feed, on) => {
    const { entries, problems } = snapshotReadings(feed, target);
    expect(problems).toEqual([]);
    expect(entries).toMatchObject([{ kind: 'reading', on, at: '06:30', meters: { engine: 8376.2 } }]);
  });

  it('holds every meter of every machine, numbers with their leading zeros', () => {
    expect(readFleetXml(ISO).snapshots.map(({ machine, meter, value }) => [machine.serial, meter, value])).toEqual([
      ['0001234', 'operating-hours', 8376.2],
      ['0001234', 'idle-hours', 1200],
      ['0001234', 'distance-km', 160.9344],
      ['9', 'operating-hours', 12.5],
    ]);
  });

  it('is the day and time where the machine stands', () => {
    const { entries } = snapshotReadings(readFleetXml(ISO), { ...target, machine: '9', zone: 'Europe/Berlin' });
    expect(entries).toMatchObject([{ on: '2026-05-12', at: '00:30' }]);
  });

  it('has the same ids when it is read again', () => {
    expect(snapshotReadings(readFleetXml(ISO), target).entries).toEqual(snapshotReadings(readFleetXml(ISO), target).entries);
  });

  it.each(['', 'NaN', '-3', '1e9', 'P1Y', 'N/A'])('refuses `%s` for hours, and says so', (hours) => {
    const feed = readFleetXml(AEMP.replace('PT8376H12M', hours));
    expect(feed.snapshots).toEqual([]);
    expect(feed.problems[0]).toContain('operating-hours of 0001234');
  });

  it('refuses a document type, so that no entity grows or reaches outside', () => {
    const bomb = `<!DOCTYPE lolz [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;">]>${AEMP}`;
    expect(readFleetXml(bomb)).toEqual({ snapshots: [], problems: ['it declares a document type, which a feed has no need of'] });
  });

  it('reads anything whatever without throwing', () => {
    fc.assert(fc.property(fc.string(), (text) => void readFleetXml(text)));
    fc.assert(fc.property(fc.json(), (text) => void readFleetJson(text)));
    expect(readFleetXml('<a><b></a>').problems[0]).toContain('1:10');
    expect(readFleetXml('<a/>').problems).toEqual(['there is no `Equipment` in it']);
    expect(readFleetXml('<a>'.repeat(50_000) + '</a>'.repeat(50_000)).snapshots).toEqual([]);
  });
});

describe('ISO 8601 durations', () => {
  it.each([
    ['PT8376H12M', 8376.2],
    ['P1DT2H30M', 26.5],
    ['P2W', 336],
    ['PT0.5H', 0.5],
    ['PT90M', 1.5],
    ['PT36S', 0.01],
    ['PT0S', 0],
  ])('%s is %d h', (text, hours) => {
    expect(hoursOfDuration(text)).toBe(hours);
  });

  it.each(['P', 'PT', 'P1Y', 'P1M', '-PT1H', 'PT1.5H30M', 'PT1H ago', '8376', 'P1DT'])('%s is refused', (text) => {
    expect(hoursOfDuration(text)).toBeNull();
  });
});

describe('the civil time of an instant', () => {
  it('is as written without a zone, and of the zone with one, over the change to summer time', () => {
    expect(localMoment('2026-05-12T08:30:00+02:00')).toEqual({ on: '2026-05-12', at: '08:30' });
    expect(localMoment('2026-03-29T00:30:00Z', 'Europe/Berlin')).toEqual({ on: '2026-03-29', at: '01:30' });
    expect(localMoment('2026-03-29T01:30:00Z', 'Europe/Berlin')).toEqual({ on: '2026-03-29', at: '03:30' });
  });

  it.each(['2026-05-12T08:30:00', '2026-02-30T08:30:00Z', '0001-01-01T00:00:00Z', 'yesterday'])('is none for %s', (text) => {
    expect(localMoment(text)).toBeNull();
  });
});
