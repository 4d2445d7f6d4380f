// The place: name, coordinates, elevation, time zone, daylight.
import { nearestName } from '../problems/nearest.ts';
import type { Zone } from '../time/instant.ts';
import { loadZone, utc, zoneNames } from '../time/zone.ts';
import { replaceWith, shorten, type Collector } from './collector.ts';
import type { MapReader } from './mapReader.ts';
import { readChoice, readCoordinate, readQuantity } from './values.ts';
import type { Place } from './types.ts';

/** Zones are named after cities: `Amsterdam` alone is near enough to name its zone. */
function nearestZone(text: string): string | null {
  const names = zoneNames();
  const wanted = text.trim().toLowerCase().replace(/\s+/g, '_');
  return names.find((name) => name.toLowerCase().endsWith(`/${wanted}`)) ?? nearestName(text, names);
}

/** The place, and the zone of every clock time; UTC where none is named, with a problem where clock times need one. */
export function readPlace(reader: MapReader | null, collector: Collector): { place: Place; zone: Zone; zoneNamed: boolean } {
  const none: Place = { name: null, latitude: null, longitude: null, elevation: null, daylight: true };
  if (!reader) return { place: none, zone: utc, zoneNamed: false };
  const latitude = reader.textNode('latitude');
  const longitude = reader.textNode('longitude');
  const elevation = reader.textNode('elevation');
  const daylight = reader.textNode('daylight');
  const place: Place = {
    name: reader.text('name'),
    latitude: latitude && readCoordinate(latitude, collector, 'latitude'),
    longitude: longitude && readCoordinate(longitude, collector, 'longitude'),
    elevation: elevation && readElevation(elevation, collector),
    daylight: daylight ? readChoice(daylight, collector, 'daylight', ['yes', 'no'] as const)?.value !== 'no' : true,
  };
  for (const [one, other, example] of [['latitude', 'longitude', '6.09'], ['longitude', 'latitude', '52.51']] as const) {
    if (reader.entry(one) && !reader.entry(other)) collector.add('missing-key', reader.place, { key: other, of: 'place', example: `${other}: ${example}` });
  }
  const zoneNode = reader.textNode('time zone');
  if (!zoneNode) return { place, zone: utc, zoneNamed: false };
  const zone = loadZone(zoneNode.value);
  if (zone) return { place, zone, zoneNamed: true };
  const nearest = nearestZone(zoneNode.value);
  collector.add('unknown-zone', zoneNode.range, { zone: shorten(zoneNode.value, 40), nearest: nearest ?? '' }, nearest ? [replaceWith(zoneNode.range, nearest)] : []);
  return { place, zone: utc, zoneNamed: true };
}

function readElevation(node: Parameters<typeof readQuantity>[0], collector: Collector): Place['elevation'] {
  const placed = readQuantity(node, collector, { key: 'elevation', like: ['m'], example: '4 m' });
  if (!placed) return null;
  const metres = placed.value.value * placed.value.unit.factor;
  if (metres < -500 || metres > 6000) {
    collector.add('out-of-range', node.range, { key: 'elevation', text: node.value.trim(), range: ['range-between', '-500 m', '6000 m'] });
    return null;
  }
  return placed;
}
