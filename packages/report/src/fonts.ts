/** Fonts as bytes, handed in by whoever has them: files in Node, fetched addresses in the browser. */
export interface ReportFonts {
  /** Source Sans 3 Regular, or another text face, TrueType. */
  regular: Uint8Array;
  /** Its semibold. */
  semibold: Uint8Array;
  /** Source Serif 4 SemiBold, for headings. */
  heading: Uint8Array;
}
