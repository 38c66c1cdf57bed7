/** Prints `N passed, N failed` from the JSON results of vitest; fails when there are none, or when nothing ran. */
import { readFileSync } from 'node:fs';

function read(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return { numPassedTests: 0, numFailedTests: 0, testResults: [] };
  }
}

const results = read(process.argv[2] ?? '');
// A file that could not be loaded holds no test that failed, but is a failure all the same.
const broken = results.testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0).length;
console.log(`${results.numPassedTests} passed, ${results.numFailedTests + broken} failed`);
process.exit(results.numPassedTests > 0 && results.numFailedTests + broken === 0 ? 0 : 1);
