/** Work lists: one row a case, as table and as map; and inventories of trees that become cases. */
export * from './columns.ts';
export { csvLine, listCsvHead, listCsvLine } from './csv.ts';
export { isDay, monthsAfter } from './dates.ts';
export { type FeatureScanner, type FeatureText, featureScanner } from './features.ts';
export * from './geoJson.ts';
export * from './inventory.ts';
export * from './order.ts';
export { type InventoryProperty, type InventorySurvey, surveyor, treeOrFault } from './survey.ts';
export * from './workRow.ts';
