import path from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** The options the project itself is compiled with. */
function projectOptions(): ts.CompilerOptions {
  const file = path.join(ROOT, 'tsconfig.json');
  const { config, error } = ts.readConfigFile(file, ts.sys.readFile);
  if (error !== undefined) throw new Error(ts.flattenDiagnosticMessageText(error.messageText, '\n'));
  return ts.parseJsonConfigFileContent(config, ts.sys, ROOT).options;
}

/**
 * The faults of files that are in memory alone, by their paths from the root of the project; what they import is
 * read from disk. One program for all of them: the modules they share are read and checked once.
 */
export function faultsOf(files: ReadonlyMap<string, string>): Map<string, string[]> {
  const texts = new Map([...files].map(([name, text]) => [path.join(ROOT, name), text]));
  const options = projectOptions();
  const host = ts.createCompilerHost(options);
  const { fileExists, readFile, getSourceFile } = host;
  host.fileExists = (name) => texts.has(name) || fileExists.call(host, name);
  host.readFile = (name) => texts.get(name) ?? readFile.call(host, name);
  host.getSourceFile = (name, version, ...rest) => {
    const text = texts.get(name);
    return text === undefined
      ? getSourceFile.call(host, name, version, ...rest)
      : ts.createSourceFile(name, text, version, true);
  };
  const program = ts.createProgram([...texts.keys()], options, host);
  return new Map(
    [...files.keys()].map((name) => {
      const source = program.getSourceFile(path.join(ROOT, name));
      const found = [...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)];
      return [name, found.map((each) => ts.flattenDiagnosticMessageText(each.messageText, '\n'))];
    }),
  );
}
