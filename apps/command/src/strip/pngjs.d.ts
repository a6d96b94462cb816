/** The part of pngjs that is used here; the package brings no types. */
declare module 'pngjs' {
  class PNG {
    constructor(options: { width: number; height: number });
    width: number;
    height: number;
    data: Buffer;
    static sync: {
      read(bytes: Buffer): PNG;
      write(png: PNG, options?: { bitDepth: 8 | 16; inputColorType: number; colorType: number }): Buffer;
    };
  }
  const pngjs: { PNG: typeof PNG };
  export default pngjs;
}
