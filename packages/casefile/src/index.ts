/** What a person recorded: schema, versions, folder and zip, table import. */
export {};
