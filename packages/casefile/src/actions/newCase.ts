/** A case with nothing in it yet. */
import { CASE_FORMAT, CASE_VERSION, type CaseFile } from '../schema/schema.ts';

export function newCase(visitedOn?: string): CaseFile {
  return {
    format: CASE_FORMAT,
    version: CASE_VERSION,
    ...(visitedOn === undefined ? {} : { visitedOn }),
    tree: {},
    sections: [],
    flares: [],
    signs: [],
    targets: [],
  };
}
