/** Edits of the sections and their outlines. */
import type { CaseFile, CaseOutline, CaseSection, CaseSurfaceArc } from '../schema/schema.ts';
import { changeSection, indexOfId, refuseTaken, withFields, withoutItem } from './places.ts';

/** Adds a section; sections stand in order of height. */
export function addSection(
  caseFile: CaseFile,
  section: Pick<CaseSection, 'id' | 'heightM' | 'outline'> & Partial<CaseSection>,
): CaseFile {
  refuseTaken(caseFile.sections, section.id, 'section');
  const sections = [...caseFile.sections, { drillings: [], ...section }];
  return { ...caseFile, sections: sections.sort((a, b) => a.heightM - b.heightM) };
}

export function removeSection(caseFile: CaseFile, sectionId: string): CaseFile {
  const index = indexOfId(caseFile.sections, sectionId, 'section');
  return { ...caseFile, sections: withoutItem(caseFile.sections, index, 'section') };
}

export function setSectionFields(
  caseFile: CaseFile,
  sectionId: string,
  fields: Partial<Pick<CaseSection, 'heightM' | 'barkMm' | 'note'>>,
): CaseFile {
  return changeSection(caseFile, sectionId, (section) => withFields(section, fields));
}

export function renameSection(caseFile: CaseFile, sectionId: string, id: string): CaseFile {
  if (id === sectionId) return caseFile;
  refuseTaken(caseFile.sections, id, 'section');
  return changeSection(caseFile, sectionId, (section) => ({ ...section, id }));
}

export function setOutline(caseFile: CaseFile, sectionId: string, outline: CaseOutline): CaseFile {
  return changeSection(caseFile, sectionId, (section) => ({ ...section, outline }));
}

/** Notes what a stretch of the surface was found to be; where stretches overlap, the worse finding holds. */
export function addSurfaceArc(caseFile: CaseFile, sectionId: string, arc: CaseSurfaceArc): CaseFile {
  return changeSection(caseFile, sectionId, (section) => ({
    ...section,
    surface: [...(section.surface ?? []), arc],
  }));
}

export function removeSurfaceArc(caseFile: CaseFile, sectionId: string, index: number): CaseFile {
  return changeSection(caseFile, sectionId, (section) => {
    const surface = withoutItem(section.surface ?? [], index, 'stretch of surface');
    return withFields(section, { surface: surface.length > 0 ? surface : undefined });
  });
}
