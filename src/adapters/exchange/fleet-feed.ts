import { readFleetTree } from './fleet-tree.js';
import type { Feed } from './meter-snapshot.js';
import { readXmlTree } from './xml-tree.js';

const LONGEST = 20_000_000;

/** Meters from the XML of ISO 15143-3 or AEMP 1.2. Total: what is not such XML is a problem. */
export function readFleetXml(xml: string): Feed {
  if (xml.length > LONGEST) return refused('it is longer than 20 million characters');
  const read = readXmlTree(xml);
  return read.kind === 'tree' ? readFleetTree(read.tree) : refused(read.problem);
}

/** Meters from the JSON form. Total: what is not such JSON is a problem. */
export function readFleetJson(json: string): Feed {
  if (json.length > LONGEST) return refused('it is longer than 20 million characters');
  try {
    return readFleetTree(JSON.parse(json));
  } catch {
    return refused('it is not JSON');
  }
}

function refused(problem: string): Feed {
  return { snapshots: [], problems: [problem] };
}
