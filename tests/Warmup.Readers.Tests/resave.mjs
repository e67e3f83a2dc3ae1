// Opens our files in musicxml-io and @tonejs/midi and saves them anew beside them, NAME.io.musicxml, NAME.io.mid and NAME.tone.mid:
// node resave.mjs FOLDER-OF-THE-LIBRARIES NAME...
import { createRequire } from "node:module";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const require = createRequire(join(process.argv[2], "package.json"));
const { parse, serialize, exportMidi } = require("musicxml-io");
const { Midi } = require("@tonejs/midi");
for (const name of process.argv.slice(3)) {
    const score = parse(readFileSync(`${name}.musicxml`, "utf8"));
    writeFileSync(`${name}.io.musicxml`, serialize(score));
    writeFileSync(`${name}.io.mid`, exportMidi(score));
    writeFileSync(`${name}.tone.mid`, new Midi(readFileSync(`${name}.mid`)).toArray());
}
