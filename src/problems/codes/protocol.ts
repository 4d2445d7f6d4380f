// Problem codes raised by src/protocol.
import type { CodeEntry } from '../codeEntry.ts';

export const protocolCodes = {
  'plan-without-keys': {
    severity: 'error', args: [], fixable: false,
    why: 'A plan is a list of keys; without one there are no tanks, times or units, and no reading has a meaning.',
    example: { protocol: 'Two tanks, one with plants.\n' },
  },
  'yaml-unreadable': {
    severity: 'error', args: ['reason', 'text'], fixable: false,
    why: 'A line that cannot be placed would otherwise be lost without a word.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nBoth tanks stood side by side\n' },
  },
  'tab-indent': {
    severity: 'error', args: ['lines'], fixable: true,
    why: 'Tabs are as wide as each editor likes, so the plan’s layers would depend on the editor.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n\tmat: {role: treatment}\n\topen: {role: control}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'bad-indentation': {
    severity: 'error', args: ['text', 'spaces'], fixable: true,
    why: 'Indentation says what belongs to what: a key in the wrong column belongs to the wrong thing.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat:\n    role: treatment\n   label: mat tank\n  open: {role: control}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'missing-colon': {
    severity: 'error', args: ['key'], fixable: true,
    why: 'Key and value are told apart by a colon.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule:\n  start: 2026-03-14 20:00\n  end 2026-03-15 10:00\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'colon-needs-space': {
    severity: 'error', args: ['key'], fixable: true,
    why: 'Without a space after it a colon is part of the word, as in 20:00.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule:\n  start: 2026-03-14 20:00\n  end:2026-03-15 10:00\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'unclosed-quote': {
    severity: 'error', args: ['text'], fixable: true,
    why: 'An open quotation mark would swallow every line after it.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nquestion: "Does a mat lower the minimum?\nby: the author\n' },
  },
  'bracket-unbalanced': {
    severity: 'error', args: ['text', 'extra'], fixable: true,
    why: 'An open bracket would swallow every line after it.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L\n  T: {what: water temperature, unit: degC}\n' },
  },
  'needs-quotes': {
    severity: 'error', args: ['key', 'text', 'reason'], fixable: true,
    why: 'Some letters have a meaning of their own in a plan; quotation marks make them plain text.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nquestion: Mat or no mat: which tank falls lower?\n' },
  },
  'formula-needs-quotes': {
    severity: 'error', args: ['key', 'text'], fixable: true,
    why: 'Inside braces and brackets a comma ends the value, so a formula with a comma would be cut in two.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nstop if:\n  - {when: at(mat.DO, 22:00) < 3 mg/L, do: Switch the air pump on}\n' },
  },
  'text-after-hash': {
    severity: 'warning', args: ['text'], fixable: true,
    why: 'What stands behind a space and # is a comment: it is in no plan card and no post.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nby: the author #2\n' },
  },
  'alias-refused': {
    severity: 'error', args: ['text'], fixable: false,
    why: 'One fact stands in one place, in plain sight: anchors and aliases hide what a tank is made of.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nby: *author\n' },
  },
  'duplicate-key': {
    severity: 'error', args: ['key'], fixable: false,
    why: 'Two values for one key cannot both hold; only the first is read.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nseed: 1\nseed: 2\n' },
  },
  'unknown-key': {
    severity: 'error', args: ['key', 'nearest', 'known'], fixable: true,
    why: 'A key that nobody reads would be left out of plan, checks and post without a word.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nqestion: Does a mat lower the minimum?\n' },
  },
  'missing-key': {
    severity: 'error', args: ['key', 'of', 'example'], fixable: false,
    why: 'Without it the plan cannot be followed, so nothing can be computed from it.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\n' },
  },
  'wrong-type': {
    severity: 'error', args: ['key', 'expected', 'found'], fixable: true,
    why: 'A value of another shape cannot be read, and guessing would be worse.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\norder: mat, open\n' },
  },
  'unknown-value': {
    severity: 'error', args: ['key', 'text', 'known', 'nearest'], fixable: true,
    why: 'Only these words have a meaning here.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatmnt}\n  open: {role: control}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'unknown-unit': {
    severity: 'error', args: ['unit', 'nearest'], fixable: true,
    why: 'A unit that is not known cannot be converted or compared.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mgg/L}\n' },
  },
  'unit-does-not-fit': {
    severity: 'error', args: ['key', 'unit', 'example'], fixable: false,
    why: 'A quantity in a unit of another kind is a slip of the pen or a mix-up.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, water depth: 28 L}\n  open: {role: control}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'unknown-zone': {
    severity: 'error', args: ['zone', 'nearest'], fixable: true,
    why: 'The time zone gives every clock time of the note its meaning.',
    example: { protocol: 'place: {time zone: Europe/Amsterdm}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'no-time-zone': {
    severity: 'warning', args: [], fixable: false,
    why: 'Clock times, clock changes and sunrise depend on the zone.',
    example: { protocol: 'tanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'bad-time': {
    severity: 'error', args: ['key', 'text'], fixable: true,
    why: 'A time that cannot be read has no place in the schedule.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nevents:\n  - {at: ligth-off, what: fed}\n' },
  },
  'time-name-has-several': {
    severity: 'error', args: ['key', 'name', 'names'], fixable: true,
    why: 'Over several nights the bare name could mean any of them.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, light on: 09:30, end: 2026-03-17 10:00, every: 1 h}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nevents:\n  - {at: light-off, what: fed}\n' },
  },
  'time-name-has-none': {
    severity: 'error', args: ['key', 'name'], fixable: false,
    why: 'A time that does not occur in the run cannot be used.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, end: 2026-03-15 10:00, every: 1 h}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nevents:\n  - {at: light-off + 1 h, what: fed}\n' },
  },
  'plan-time-skipped': {
    severity: 'error', args: ['key', 'time', 'zone'], fixable: true,
    why: 'Clocks are put forward over it, so this time does not exist on that day.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-29 02:30, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'plan-time-repeated': {
    severity: 'error', args: ['key', 'time', 'zone'], fixable: true,
    why: 'Clocks are put back over it, so this time comes twice on that day.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-10-25 02:30, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'window-backwards': {
    severity: 'error', args: ['key', 'text'], fixable: false,
    why: 'A stretch of time runs from an earlier to a later time.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nphases: {late: light-off + 3 h..light-off}\n' },
  },
  'end-before-start': {
    severity: 'error', args: ['start', 'end'], fixable: false,
    why: 'A run cannot end before it starts.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, end: 2026-03-14 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'too-many-slots': {
    severity: 'error', args: ['every', 'most'], fixable: false,
    why: 'So many planned readings are nearly always a slip, such as 1 s for 1 min.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, end: 2026-03-25 10:00, every: 1 s}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'bad-duration': {
    severity: 'error', args: ['key', 'text'], fixable: false,
    why: 'Without a unit nobody knows whether 30 means minutes or seconds.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, every: 30}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'bad-number': {
    severity: 'error', args: ['key', 'text', 'example'], fixable: false,
    why: 'A number that cannot be read cannot be computed with.',
    example: { protocol: 'place: {latitude: north, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'bad-quantity': {
    severity: 'error', args: ['key', 'text', 'example'], fixable: true,
    why: 'A number without a unit could mean anything.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment}\n  open: {role: control}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L, accuracy: 0.1}\n' },
  },
  'bad-size': {
    severity: 'error', args: ['text'], fixable: false,
    why: 'Length, width and height give the volume and the surface of the water.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 cm}\n  open: {role: control}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'plan-decimal-comma': {
    severity: 'error', args: ['text', 'mended'], fixable: true,
    why: 'In a plan a comma separates values; decimals have a point.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat:\n    role: treatment\n    water depth: 28,5 cm\n  open: {role: control}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'out-of-range': {
    severity: 'error', args: ['key', 'text', 'range'], fixable: false,
    why: 'A value outside what is possible is a slip of the pen.',
    example: { protocol: 'place: {latitude: 152.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'water-deeper-than-tank': {
    severity: 'error', args: ['tank'], fixable: false,
    why: 'The volume and the surface would be wrong.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 38 cm}\n  open: {role: control}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'volume-typed-twice': {
    severity: 'information', args: ['tank'], fixable: false,
    why: 'One fact has one place: size and water depth already give the volume.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm, volume: 40 L}\n  open: {role: control}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'reserved-name': {
    severity: 'error', args: ['name', 'kind'], fixable: true,
    why: 'The word has a meaning of its own in formulas.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment}\n  control: {role: control}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'bad-name': {
    severity: 'error', args: ['name', 'kind'], fixable: true,
    why: 'Names stand in formulas and heads, so they are single words.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat tank: {role: treatment}\n  open: {role: control}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'name-used-twice': {
    severity: 'error', args: ['name', 'kind', 'other'], fixable: false,
    why: 'A formula could not tell which of the two is meant.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nevents:\n  - {at: 23:00, what: fed, id: mat}\n' },
  },
  'like-in-a-circle': {
    severity: 'error', args: ['tanks'], fixable: false,
    why: 'A tank cannot be like itself: nobody could say what it is made of.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, like: open}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n' },
  },
  'unknown-tank': {
    severity: 'error', args: ['name', 'nearest', 'known'], fixable: true,
    why: 'Only tanks of this plan can be referred to.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\norder: [matt, open]\n' },
  },
  'unknown-measure': {
    severity: 'error', args: ['name', 'nearest', 'known'], fixable: true,
    why: 'Only what this plan measures can have limits.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nlimits:\n  - {for: Corydoras, quantity: D0, at least: 4 mg/L}\n' },
  },
  'criterion-with-level': {
    severity: 'error', args: ['criterion', 'key'], fixable: false,
    why: 'A published criterion has its own levels; another one beside its name would be quoted under the wrong source.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nlimits:\n  - {criterion: "EPA 1986 warm water, other life stages", at least: 4 mg/L}\n' },
  },
  'unknown-quantity': {
    severity: 'error', args: ['what', 'nearest'], fixable: true,
    why: 'The quantity decides units, plausible values and what can be computed.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: disolved oxygen, unit: mg/L}\n' },
  },
  'scale-word-twice': {
    severity: 'error', args: ['word'], fixable: false,
    why: 'Each word of a scale stands for one level.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  calmness: {what: behaviour, scale: [calm, calm, gasping]}\n' },
  },
  'bad-plan-seal': {
    severity: 'error', args: ['text'], fixable: false,
    why: 'A seal holds the time and the digest of the plan as it was fixed.',
    example: { protocol: 'place: {latitude: 52.5, longitude: 6.1, time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment, size: 50 x 30 x 32 cm, water depth: 28 cm}\n  open: {role: control, like: mat}\nschedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 10:00, every: 30 min}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\nsealed: yesterday\n' },
  },
} as const satisfies Record<string, CodeEntry>;
