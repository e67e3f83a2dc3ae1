// Opens MusicXML files in webmscore and prints, a JSON object a line, the MusicXML and the MIDI (as base64) that it writes of each: node reopen.mjs FOLDER-OF-WEBMSCORE FILE...
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { join } from "node:path";

// The library takes the path of its own file for an address where Node offers to fetch one.
delete globalThis.fetch;
const require = createRequire(join(process.argv[2], "package.json"));
const library = require("webmscore");
const WebMscore = library.default ?? library;
await WebMscore.ready;
for (const file of process.argv.slice(3)) {
    const score = await WebMscore.load("musicxml", readFileSync(file), [], false);
    console.log(JSON.stringify({ xml: await score.saveXml(), midi: Buffer.from(await score.saveMidi(true, true)).toString("base64") }));
}

process.exit(0);
