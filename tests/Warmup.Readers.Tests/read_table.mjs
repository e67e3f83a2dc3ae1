// Reads a table as Parquet and as CSV with two independent readers and prints one JSON text:
//   node read_table.mjs FOLDER-OF-THE-READERS TABLE.parquet TABLE.csv
// hyparquet reads the Parquet file from its bytes; DuckDB reads both files and adds up the Parquet file itself.
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const [folder, parquet, csv] = process.argv.slice(2);
const require = createRequire(join(folder, "package.json"));
const load = (name) => import(pathToFileURL(require.resolve(name)));

const { parquetMetadata, parquetReadObjects } = await load("hyparquet");
const bytes = readFileSync(parquet);
const file = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
const metadata = parquetMetadata(file);

const { DuckDBInstance } = await load("@duckdb/node-api");
const connection = await (await DuckDBInstance.create(":memory:")).connect();
const rowsOf = async (sql, ...values) => (await connection.runAndReadAll(sql, values)).getRowObjectsJS();
const plain = (rows) => rows.map((row) => Object.fromEntries(Object.entries(row).map(([name, value]) => [name, typeof value === "bigint" ? Number(value) : value])));

console.log(JSON.stringify({
    groups: metadata.row_groups.map((group) => Number(group.num_rows)),
    types: metadata.schema.slice(1).map((column) => [column.name, column.type]),
    metadata: Object.fromEntries(metadata.key_value_metadata.map((entry) => [entry.key, entry.value])),
    hyparquet: plain(await parquetReadObjects({ file })),
    duckdb: plain(await rowsOf("select * from read_parquet(?)", parquet)),
    csv: plain(await rowsOf("select * from read_csv(?, header = true, nullstr = '', sample_size = -1)", csv)),
    sums: plain(await rowsOf("select count(*)::integer as count, sum(notes)::integer as notes, sum(lines)::integer as lines, sum(difficulty)::integer as difficulty from read_parquet(?)", parquet)),
}));
