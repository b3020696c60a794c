// Body points, plumb line, thigh angle and tread, drawn over the clip from the tracks. Colours are those of the overlay videos.
const video = document.getElementById("video");
const canvas = document.getElementById("overlay");
const seat = "#E69F00", plumb = "#56B4E9", foot = "#00B88A", paper = "#F7F5F0", casing = "rgba(20,28,36,0.75)";
const limbs = [["shoulder", "elbow", paper], ["elbow", "wrist", paper], ["shoulder", "hip", paper], ["knee", "ankle", paper], ["ankle", "heel", foot], ["heel", "toe", foot], ["hip", "knee", seat]];
const treadShare = 0.7; // the ball of the foot on the way from heel to toe, as in the overlay videos
let track = null, on = true, shown = 0;

export function use(tracks) {
  track = tracks;
  draw(shown);
}

export function toggle() {
  on = !on;
  draw(shown);
  return on;
}

export function draw(seconds) {
  shown = seconds;
  const ratio = window.devicePixelRatio || 1;
  const [w, h] = [canvas.clientWidth, canvas.clientHeight];
  if (canvas.width !== Math.round(w * ratio) || canvas.height !== Math.round(h * ratio)) {
    canvas.width = Math.round(w * ratio);
    canvas.height = Math.round(h * ratio);
  }
  const g = canvas.getContext("2d");
  g.setTransform(ratio, 0, 0, ratio, 0, 0);
  g.clearRect(0, 0, w, h);
  canvas.dataset.drawn = "false";
  if (!on || !track || !video.videoWidth) return;
  const frame = nearest(seconds);
  if (frame < 0) return;
  const zoom = Math.min(w / video.videoWidth, h / video.videoHeight);
  const [pw, ph] = [video.videoWidth * zoom, video.videoHeight * zoom];
  const [left, top] = [(w - pw) / 2, (h - ph) / 2];
  const at = (name) => {
    const i = track.names.indexOf(name) * 2;
    const x = track.points[frame][i], y = track.points[frame][i + 1];
    return x === null || y === null ? null : { x: left + x * pw, y: top + y * ph };
  };
  drawPlumb(g, at);
  drawThigh(g, at, frame);
  for (const [a, b, colour] of limbs) line(g, at(a), at(b), colour, 3);
  for (const name of ["shoulder", "elbow", "wrist", "ankle"]) dot(g, at(name), paper, 4);
  for (const name of ["hip", "knee"]) dot(g, at(name), seat, 5);
  const heel = at("heel"), toe = at("toe");
  if (heel && toe) dot(g, { x: heel.x + (toe.x - heel.x) * treadShare, y: heel.y + (toe.y - heel.y) * treadShare }, foot, 5);
  canvas.dataset.drawn = "true";
}

function drawPlumb(g, at) {
  const hip = at("hip");
  if (!hip) return;
  const seen = track.names.map(at).filter(Boolean).map((p) => p.y);
  line(g, { x: hip.x, y: Math.min(...seen) - 14 }, { x: hip.x, y: Math.max(...seen) + 14 }, plumb, 2);
}

function drawThigh(g, at, frame) {
  const hip = at("hip"), knee = at("knee"), angle = track.thighAngleDeg[frame];
  if (!hip || !knee || angle === null || !track.forward) return;
  const radius = Math.hypot(knee.x - hip.x, knee.y - hip.y) / 2;
  const down = Math.PI / 2, end = down - track.forward * angle * Math.PI / 180;
  g.beginPath();
  g.moveTo(hip.x, hip.y);
  g.arc(hip.x, hip.y, radius, down, end, (end < down));
  g.closePath();
  g.fillStyle = "rgba(230,159,0,0.3)";
  g.fill();
  g.font = "600 16px system-ui, sans-serif";
  g.textAlign = "center";
  const text = `${angle.toFixed(0)}°`, x = knee.x + track.forward * 34, y = knee.y - 6;
  g.lineWidth = 4;
  g.strokeStyle = casing;
  g.strokeText(text, x, y);
  g.fillStyle = seat;
  g.fillText(text, x, y);
}

function line(g, a, b, colour, width) {
  if (!a || !b) return;
  for (const [style, w] of [[casing, width + 2.5], [colour, width]]) {
    g.beginPath();
    g.moveTo(a.x, a.y);
    g.lineTo(b.x, b.y);
    g.lineCap = "round";
    g.strokeStyle = style;
    g.lineWidth = w;
    g.stroke();
  }
}

function dot(g, p, colour, radius) {
  if (!p) return;
  for (const [style, r] of [[casing, radius + 1.5], [colour, radius]]) {
    g.beginPath();
    g.arc(p.x, p.y, r, 0, 2 * Math.PI);
    g.fillStyle = style;
    g.fill();
  }
}

/** The frame of that time; -1 where none is near enough to be it. */
function nearest(seconds) {
  const t = track.timeSeconds;
  let low = 0, high = t.length - 1;
  if (high < 0) return -1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (t[middle] < seconds) low = middle + 1;
    else high = middle;
  }
  if (low > 0 && seconds - t[low - 1] < t[low] - seconds) low--;
  const step = t.length > 1 ? (t[t.length - 1] - t[0]) / (t.length - 1) : Infinity;
  return Math.abs(t[low] - seconds) <= 0.75 * step ? low : -1;
}

new ResizeObserver(() => draw(shown)).observe(canvas);
