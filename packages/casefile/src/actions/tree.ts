/** Edits of the tree, its crown and its site. Setting a field to undefined takes it out. */
import type { CaseCrown, CaseFile, CaseSite, CaseTree } from '../schema/schema.ts';
import { withFields } from './places.ts';

export function setTreeField<F extends Exclude<keyof CaseTree, 'crown'>>(
  caseFile: CaseFile,
  field: F,
  value: CaseTree[F],
): CaseFile {
  return { ...caseFile, tree: withFields(caseFile.tree, { [field]: value } as Partial<CaseTree>) };
}

export function setCrownField<F extends keyof CaseCrown>(
  caseFile: CaseFile,
  field: F,
  value: CaseCrown[F],
): CaseFile {
  const crown = withFields(caseFile.tree.crown ?? {}, { [field]: value } as Partial<CaseCrown>);
  return { ...caseFile, tree: { ...caseFile.tree, crown } };
}

/** Replaces the site; undefined takes it out. */
export function setSite(caseFile: CaseFile, site: CaseSite | undefined): CaseFile {
  return withFields(caseFile, { site });
}

/**
 * Changes the wind code. The speed is not carried over between codes of different meaning (a 10-minute mean is not a
 * 3-second gust), nor is the roughness class.
 */
export function setWindCode(caseFile: CaseFile, windCode: CaseSite['windCode']): CaseFile {
  const { site } = caseFile;
  if (site?.windCode === windCode) return caseFile;
  const bothAsce = site && site.windCode !== 'EN 1991-1-4' && windCode !== 'EN 1991-1-4';
  const soil = site?.soil === undefined ? {} : { soil: site.soil };
  return { ...caseFile, site: bothAsce ? { ...site, windCode } : { windCode, ...soil } };
}

/** Sets the basic wind speed, where it is from, its return period, or the soil; the wind code must be chosen first. */
export function setSiteFields(
  caseFile: CaseFile,
  fields: Partial<Pick<CaseSite, 'basicWindSpeedMs' | 'basicWindSource' | 'basicWindReturnYears' | 'soil'>>,
): CaseFile {
  if (!caseFile.site) return caseFile;
  return { ...caseFile, site: withFields(caseFile.site, fields) };
}
