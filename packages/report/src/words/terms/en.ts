/**
 * The set words of the trade that stand alone in tables: scales of likelihood, harm and risk, what was recorded from a
 * list. The words themselves are the keys, as the assessment and the case have them.
 */
function same<Word extends string>(...words: Word[]): Record<Word, string> {
  const table: Partial<Record<Word, string>> = {};
  for (const word of words) table[word] = word;
  return table as Record<Word, string>;
}

export const englishTerms = {
  failure: same('improbable', 'possible', 'probable', 'imminent'),
  impact: same('very low', 'low', 'medium', 'high'),
  event: same('unlikely', 'somewhat likely', 'likely', 'very likely'),
  consequences: same('negligible', 'minor', 'significant', 'severe'),
  risk: same('low', 'moderate', 'high', 'extreme'),
  occupancy: same('rare', 'occasional', 'frequent', 'constant'),
  protection: same('none', 'partial', 'good'),
  priority: same('first', 'advised', 'possible', 'not advised'),
  crown: same('ellipse', 'dome', 'cone', 'paraboloid', 'rectangle', 'rhombus', 'inverted-cone'),
  sign: same(
    'fruiting body',
    'cavity',
    'old wound',
    'crack',
    'seam',
    'bulge',
    'loose bark',
    'included bark',
    'frass',
    'ants',
    'borer holes',
    'sap flow',
    'dead limb',
    'thin crown',
    'lean',
    'root cut',
    'soil crack',
    'soil heave',
  ),
  unit: same('years', 'months', 'tree heights', 'cm/year', 'in/year', 'degrees', '1/m'),
};

export type Terms = typeof englishTerms;
export type TermScale = keyof Terms;
