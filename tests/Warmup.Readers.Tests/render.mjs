// Opens MusicXML files in Verovio and prints, a JSON object a line, what it found in each: node render.mjs FOLDER-OF-VEROVIO FILE...
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { join } from "node:path";

const require = createRequire(join(process.argv[2], "package.json"));
const createVerovioModule = (await import(require.resolve("verovio/wasm"))).default;
const { VerovioToolkit } = await import(require.resolve("verovio/esm").replace(/\.cjs$/, ".mjs"));

const toolkit = new VerovioToolkit(await createVerovioModule());
toolkit.setOptions({ breaks: "encoded", footer: "none" });

const count = (svg, name) => svg.split(`class="${name}"`).length - 1;

for (const file of process.argv.slice(3)) {
    const loaded = toolkit.loadData(readFileSync(file, "utf8"));
    let svg = "";
    for (let page = 1; page <= toolkit.getPageCount(); page++) {
        svg += toolkit.renderToSVG(page);
    }

    const mei = toolkit.getMEI({});
    const syllables = [...mei.matchAll(/<verse [^>]*?n="(\d+)"[^>]*>\s*<syl[^>]*>([^<]*)<\/syl>/g)].map((m) => [Number(m[1]), m[2]]);

    // The map of times lists the later notes of a tie too: they do not sound anew.
    const tied = new Set([...mei.matchAll(/<tie [^>]*?endid="#([^"]+)"/g)].map((m) => m[1]));
    const onsets = toolkit.renderToTimemap({ includeRests: false })
        .flatMap((e) => (e.on ?? []).filter((id) => !tied.has(id)).map((id) => [e.qstamp, toolkit.getMIDIValuesForElement(id).pitch]));
    console.log(JSON.stringify({
        loaded,
        pages: toolkit.getPageCount(),
        written: count(svg, "note"),
        onsets,
        syllables,
        breaths: count(svg, "breath"),
        slurs: count(svg, "slur"),
    }));
}
