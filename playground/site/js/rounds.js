// Practising without looking, as a plan over the bars that have been played: in
// a round the sheet is there to look at, then to glance at, then it is away.

/** "look", "glance" or "away" in the bar with this count from the start, and how many bars are left of it. */
export function phase(plan, bar) {
  const parts = ["look", "glance", "away"].map((name) => ({ name, bars: plan[name] })).filter((part) => part.bars > 0);
  const length = parts.reduce((sum, part) => sum + part.bars, 0);
  if (length === 0) return { name: "look", left: 0, round: 1 };
  let at = ((bar % length) + length) % length;
  const round = Math.floor(bar / length) + 1;
  for (const part of parts) {
    if (at < part.bars) return { name: part.name, left: part.bars - at, round };
    at -= part.bars;
  }
  return { name: "look", left: 0, round };
}

/** The tempo of a repair: a share of the tempo in percent, within what can be played. */
export function slowed(tempo, percent) {
  return Math.min(400, Math.max(10, Math.round((tempo * percent) / 100)));
}
