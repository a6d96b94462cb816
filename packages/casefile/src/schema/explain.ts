/**
 * What the schema found wrong, in the words of the person who has to mend it.
 */
import { InputFault } from '@standfast/engine';
import type { z } from 'zod';

/** What to write where a needed field is missing, by its path with the numbers left out. */
const WHAT_TO_WRITE: Record<string, string> = {
  tree: 'an object with species, stemDiameterMm, heightM and crown',
  'sections[].id': 'a short name of its own, for example "s1"',
  'sections[].heightM': 'the height of the section above ground in metres',
  'sections[].outline': 'the outline over bark, for example {"kind": "circle", "diameterMm": 900}',
  'sections[].outline.kind': '"circle", "ellipse", "radii" or "polygon"',
  'sections[].outline.diameterMm': 'the diameter over bark in millimetres',
  'sections[].outline.longMm': 'the longer diameter over bark in millimetres',
  'sections[].outline.shortMm': 'the shorter diameter over bark in millimetres',
  'sections[].outline.longAxisDeg': 'the direction of the longer diameter in degrees clockwise from north',
  'sections[].outline.radii': 'a list like [{"azimuthDeg": 0, "radiusMm": 500}, …] all round the stem',
  'sections[].outline.points': 'a list of corners [[xMm, yMm], …], x east and y north',
  'sections[].drillings[].id': 'a short name of its own, for example "d1"',
  'sections[].drillings[].azimuthDeg': 'where on the stem the needle goes in, degrees clockwise from north',
  'sections[].felled.unsound':
    'a list of polygons of wood without strength [[[xMm, yMm], …], …], or [] when all of it was sound',
  'sections[].felled.outline.kind': '"circle", "ellipse", "radii" or "polygon"',
  'flares[].id': 'a short name of its own, for example "f1"',
  'flares[].azimuthDeg': 'the direction of the flare, degrees clockwise from north',
  'flares[].drillings[].id': 'a short name of its own, for example "d9"',
  'flares[].drillings[].azimuthDeg': 'where the needle goes in, degrees clockwise from north',
  'site.windCode': '"EN 1991-1-4", "ASCE 7-22" or "ASCE 7-16"',
  'signs[].kind': 'what was seen, for example "fruiting body"',
  'sections[].opening.azimuthDeg': 'the middle of the opening, degrees clockwise from north',
  'sections[].opening.widthMm': 'the width of the opening along the bark in millimetres',
  'sections[].surface[].fromDeg': 'where the stretch of surface begins, degrees clockwise from north',
  'sections[].surface[].toDeg': 'where it ends, going clockwise, degrees clockwise from north',
  'sections[].surface[].state':
    '"sound" (bark alive and firm), "decayed" (wood soft to a probe) or "open" (a hollow seen from outside)',
  'staticTests[].directionDeg': 'where the tree was pulled to, degrees clockwise from north',
  'staticTests[].momentNm': 'the moment at the ground at that tilt, in N·m (force by height of the rope)',
  'staticTests[].tiltDeg': 'the tilt of the root plate reached, in degrees, 0.25 if possible',
  'rootCuts[].azimuthDeg': 'the side of the cut, degrees clockwise from north',
  'rootCuts[].distanceM': 'from the bark of the stem to the nearest point of the cut, in metres',
  'rootSpace[].azimuthDeg': 'the side on which roots cannot spread, degrees clockwise from north',
  'rootSpace[].distanceM': 'from the bark of the stem to what stops the roots, in metres',
  'decision.byTarget[].target': 'the name of the target as recorded in targets',
  'advice[].option': 'the id of an option of the advice, for example "reduce-10"',
  'report.added[].after':
    'the key of the passage that the text follows, as the HTML report has it in data-key',
  'report.added[].text': 'the text to add',
  'report.reduced[].photo': 'the path of the photo that was made smaller',
  'report.reduced[].originalSha256': 'the SHA-256 of the photo as it was taken, 64 hexadecimal digits',
  'report.reduced[].originalBytes': 'the size of the photo as it was taken, in bytes',
  'targets[].what': 'what could be struck, for example "footpath"',
};

/** A field's path as a person reads it in the file: `sections[0].outline.diameterMm`. */
export function fieldPath(path: readonly PropertyKey[]): string {
  let text = '';
  for (const part of path) {
    if (typeof part === 'number') text += `[${part}]`;
    else text += text ? `.${String(part)}` : String(part);
  }
  return text;
}

/** The value at a path, undefined where there is none. */
export function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  let value = root;
  for (const part of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<PropertyKey, unknown>)[part];
  }
  return value;
}

/** One schema issue as a fault. `where` names the file. */
export function explainIssue(issue: z.core.$ZodIssue, root: unknown, where: string): InputFault {
  const path = fieldPath(issue.path);
  const value = valueAt(root, issue.path);
  return new InputFault(sentence(issue, value, path), path ? `${where}: ${path}` : where);
}

function sentence(issue: z.core.$ZodIssue, value: unknown, path: string): string {
  if (value === undefined || value === null) return missing(path, issue);
  switch (issue.code) {
    case 'invalid_type':
      return wrongType(issue.expected, value);
    case 'invalid_value':
      return `${shown(value)} is not known here: write ${issue.values.map((each) => JSON.stringify(each)).join(', ')}`;
    case 'invalid_union':
      return `${shown(value)} is not known here: write ${WHAT_TO_WRITE[withoutNumbers(path)] ?? 'one of the kinds the format lists'}`;
    case 'too_small':
      return tooSmall(issue, value);
    case 'too_big':
      return `is too ${issue.origin === 'array' ? 'long' : 'large'}: at most ${issue.maximum}`;
    case 'invalid_format':
      return `${shown(value)} is not a date: write year-month-day, for example "2026-05-14"`;
    default:
      return `${shown(value)} cannot be used here (${issue.message})`;
  }
}

function missing(path: string, issue: z.core.$ZodIssue): string {
  const remedy = WHAT_TO_WRITE[withoutNumbers(path)];
  if (remedy) return `is missing: write ${remedy}`;
  return issue.code === 'invalid_type' ? `is missing: write ${kindOf(issue.expected)}` : 'is missing';
}

function wrongType(expected: string, value: unknown): string {
  if (expected === 'number' && typeof value === 'string') {
    return `should be a number, not the text ${shown(value)}: write it without quotes, with a point as decimal sign`;
  }
  if (expected === 'number' && typeof value === 'number') return 'is not a finite number';
  return `should be ${kindOf(expected)}, not ${shown(value)}`;
}

function tooSmall(issue: z.core.$ZodIssueTooSmall, value: unknown): string {
  if (issue.origin === 'string') return 'is empty: write a name';
  if (issue.origin === 'array') return `should hold ${issue.minimum} values, not ${shown(value)}`;
  return `is ${shown(value)}: it must be ${issue.inclusive ? 'at least' : 'more than'} ${issue.minimum}`;
}

function kindOf(expected: string): string {
  const words: Record<string, string> = {
    object: 'an object {…}',
    array: 'a list […]',
    tuple: 'a pair [xMm, yMm]',
    number: 'a number',
    string: 'a text in quotes',
    boolean: 'true or false',
  };
  return words[expected] ?? expected;
}

function withoutNumbers(path: string): string {
  return path.replace(/\[\d+\]/g, '[]');
}

/** A value short enough for a message. */
function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
