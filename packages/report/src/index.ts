/** Figures (data to drawing) and documents (assessment to PDF and HTML). */
export {};
