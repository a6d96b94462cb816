import { describe, expect, it } from 'vitest';
import { fungusNotices } from './fungi.ts';

describe('fungusNotices', () => {
  it('names where and how, by species or by genus, at the sign', () => {
    const notices = fungusNotices([
      { kind: 'ants' },
      { kind: 'fruiting body', note: 'Ganoderma applanatum at the foot' },
      { kind: 'fruiting-body: Laetiporus sulphureus' },
    ]);
    expect(notices.map((each) => each.where)).toEqual(['signs[1]', 'signs[2]']);
    expect(notices[0]?.text).toContain('root, butt and lower stem (white rot)');
    expect(notices[1]?.text).toContain('brown rot');
    expect(notices[1]?.text).toContain('from memory');
  });

  it('tells species of one genus apart, and is silent on what it does not know', () => {
    expect(fungusNotices([{ kind: 'fruiting body', note: 'Inonotus hispidus' }])).toHaveLength(1);
    expect(fungusNotices([{ kind: 'fruiting body', note: 'a bracket' }])).toEqual([]);
  });
});
