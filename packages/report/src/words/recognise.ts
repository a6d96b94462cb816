/** Recognises what the engine says by the templates of sentences/en.ts, and pulls out the values. */
import { englishSentences } from './sentences/en.ts';

export interface Recognised {
  room: string;
  name: string;
  /** Place in the template to what stands there. */
  values: Record<string, string>;
}

interface Template {
  room: string;
  name: string;
  places: string[];
  pattern: RegExp;
  literal: number;
}

const PLACE = /\{(\w+)\}/g;

export function placesOf(template: string): string[] {
  return [...template.matchAll(PLACE)].map(([, name]) => name!);
}

/** A template with its places filled. */
export function filled(template: string, value: (place: string) => string): string {
  return template.replace(PLACE, (_, place: string) => value(place));
}

const plain = new Map<string, Recognised>();
const templates: Template[] = [];
for (const [room, entries] of Object.entries(englishSentences)) {
  for (const [name, template] of Object.entries(entries) as [string, string][]) {
    const places = placesOf(template);
    if (places.length === 0) {
      plain.set(template, { room, name, values: {} });
      continue;
    }
    const escaped = template
      .split(PLACE)
      .map((part, i) => (i % 2 === 0 ? part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&') : '([\\s\\S]+?)'));
    templates.push({
      room,
      name,
      places,
      pattern: new RegExp(`^${escaped.join('')}$`),
      literal: template.replace(PLACE, '').length,
    });
  }
}
// The template with the most of its own words speaks first: `Recorded: {signs}.` after all longer ones that fit.
templates.sort((a, b) => b.literal - a.literal);

/** The templates that a text may have been made from, the one with the most words of its own first. */
export function recognise(text: string): Recognised[] {
  const whole = plain.get(text);
  if (whole) return [whole];
  const found: Recognised[] = [];
  for (const { room, name, places, pattern } of templates) {
    const match = pattern.exec(text);
    if (!match) continue;
    const values = Object.fromEntries(places.map((place, i) => [place, match[i + 1]!]));
    found.push({ room, name, values });
  }
  return found;
}
