import about from '../package.json' with { type: 'json' };

/** The command line's version, from its package. */
export const VERSION: string = about.version;
