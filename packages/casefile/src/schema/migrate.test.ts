import { describe, expect, it } from 'vitest';
import { type MigrationSteps, migrate } from './migrate.ts';

const at = (version: unknown) => ({ format: 'standfast-case', version, tree: {} });

describe('migrate', () => {
  it('leaves the newest version as it is', () => {
    const document = at(1);
    expect(migrate(document, 'case.json')).toEqual({ document, writtenIn: 1 });
  });

  it('climbs the ladder one version at a time', () => {
    const steps: MigrationSteps = {
      1: ({ height, ...rest }) => ({ ...rest, heightM: height }),
      2: (document) => ({ ...document, heightMm: Number(document.heightM) * 1000 }),
    };
    const { document, writtenIn } = migrate({ ...at(1), height: 2 }, 'case.json', steps, 3);
    expect(writtenIn).toBe(1);
    expect(document).toEqual({ format: 'standfast-case', version: 3, tree: {}, heightM: 2, heightMm: 2000 });
    expect(migrate({ ...at(2), heightM: 5 }, 'case.json', steps, 3).document).toMatchObject({
      heightMm: 5000,
    });
  });

  it('refuses a version whose step is gone', () => {
    expect(() => migrate(at(1), 'case.json', { 2: (document) => document }, 3)).toThrow(
      'case.json: version 1 is too old for this program, which reads version 3',
    );
  });

  it('refuses a newer version and says that nothing was changed', () => {
    expect(() => migrate(at(2), 'case.json')).toThrow(
      'case.json: version 2 is newer than this program reads (up to 1): open it with a newer Standfast. Nothing was read and nothing was changed',
    );
  });

  it.each([
    [undefined, 'version is missing'],
    ['1', 'version is "1"'],
    [0, 'version is 0'],
    [1.5, 'version is 1.5'],
  ])('refuses version %s', (version, message) => {
    expect(() => migrate(at(version), 'case.json')).toThrow(message);
  });

  it.each([
    [null, 'this is not a case file'],
    [[1], 'this is not a case file'],
    [{ version: 1 }, 'format is missing'],
    [{ format: 'other', version: 1 }, 'format is "other"'],
    [{ format: 'standfast-assessment', version: 1 }, 'this is an assessment that was computed, not a case'],
  ])('refuses %j', (json, message) => {
    expect(() => migrate(json, 'case.json')).toThrow(message);
  });
});
