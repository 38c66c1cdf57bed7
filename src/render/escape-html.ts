import { safeText } from './safe-text.js';

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Text for the inside of an HTML element or of a quoted attribute: safe as in {@link safeText}, and with the five signs escaped. */
export function escapeHtml(text: string): string {
  return safeText(text).replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign);
}
