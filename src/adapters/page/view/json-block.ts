/**
 * JSON as it may stand inside a `<script>` block of data: the same JSON, with the signs escaped that could end the block.
 *
 * @example jsonBlock('"</script>"') // '"\\u003c/script>"'
 */
export function jsonBlock(json: string): string {
  return json.replace(/</g, '\\u003c').replaceAll('\u2028', '\\u2028').replaceAll('\u2029', '\\u2029');
}
