// Body points, plumb line, thigh angle and the track of the tread, drawn over a clip from the tracks. Colours are those of the overlay videos.
const seat = "#E69F00", plumb = "#56B4E9", foot = "#00B88A", paper = "#F7F5F0", casing = "rgba(20,28,36,0.75)";
const limbs = [["shoulder", "elbow", paper], ["elbow", "wrist", paper], ["shoulder", "hip", paper], ["knee", "ankle", paper], ["ankle", "heel", foot], ["heel", "toe", foot], ["hip", "knee", seat]];
const treadShare = 0.7; // the ball of the foot on the way from heel to toe, as in the overlay videos
const trailSeconds = 0.7; // about a stride of the tread's way, measured from the hip so that a moving camera does not draw it

/** An overlay over one video. */
export function over(video, canvas) {
  let track = null, on = true, mirrored = false, shown = 0;

  function draw(seconds) {
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
    const frame = nearest(track, seconds);
    if (frame < 0) return;
    const picture = pictureIn(video, canvas);
    const at = (name, f = frame) => {
      const i = track.names.indexOf(name) * 2;
      const x = track.points[f][i], y = track.points[f][i + 1];
      return x === null || y === null ? null : { x: picture.left + (mirrored ? 1 - x : x) * picture.width, y: picture.top + y * picture.height };
    };
    drawPlumb(g, at, track.names);
    drawTrail(g, at, track, frame);
    drawThigh(g, at, track.thighAngleDeg[frame], mirrored ? -track.forward : track.forward);
    for (const [a, b, colour] of limbs) line(g, at(a), at(b), colour, 3);
    for (const name of ["shoulder", "elbow", "wrist", "ankle"]) dot(g, at(name), paper, 4);
    for (const name of ["hip", "knee"]) dot(g, at(name), seat, 5);
    dot(g, tread(at, frame), foot, 5);
    canvas.dataset.drawn = "true";
  }

  new ResizeObserver(() => draw(shown)).observe(canvas);
  return {
    draw,
    use(tracks, isMirrored = false) {
      [track, mirrored] = [tracks, isMirrored];
      draw(shown);
    },
    toggle() {
      on = !on;
      draw(shown);
      return on;
    },
    /** The tool's points at a time, as shares of the picture by name; null where none is near. */
    pointsAt(seconds) {
      const frame = track ? nearest(track, seconds) : -1;
      if (frame < 0) return null;
      return Object.fromEntries(track.names.map((name, i) => [name, { x: track.points[frame][2 * i], y: track.points[frame][2 * i + 1] }]).filter(([, p]) => p.x !== null && p.y !== null));
    },
  };
}

/** Where the picture lies within the box of its canvas, CSS px: the video keeps its shape. */
export function pictureIn(video, canvas) {
  const [w, h] = [canvas.clientWidth, canvas.clientHeight];
  const zoom = Math.min(w / video.videoWidth, h / video.videoHeight);
  const [width, height] = [video.videoWidth * zoom, video.videoHeight * zoom];
  return { left: (w - width) / 2, top: (h - height) / 2, width, height };
}

function tread(at, frame) {
  const heel = at("heel", frame), toe = at("toe", frame);
  return heel && toe ? { x: heel.x + (toe.x - heel.x) * treadShare, y: heel.y + (toe.y - heel.y) * treadShare } : null;
}

function drawPlumb(g, at, names) {
  const hip = at("hip");
  if (!hip) return;
  const seen = names.map((n) => at(n)).filter(Boolean).map((p) => p.y);
  line(g, { x: hip.x, y: Math.min(...seen) - 14 }, { x: hip.x, y: Math.max(...seen) + 14 }, plumb, 2);
}

/** Where the tread was before, laid to where the hip is now sideways. */
function drawTrail(g, at, track, frame) {
  const hip = at("hip");
  if (!hip) return;
  g.beginPath();
  let draws = false;
  for (let f = frame; f >= 0 && track.timeSeconds[frame] - track.timeSeconds[f] <= trailSeconds; f--) {
    const point = tread(at, f), then = at("hip", f);
    if (point && then) {
      const x = point.x - then.x + hip.x;
      if (draws) g.lineTo(x, point.y);
      else g.moveTo(x, point.y);
    }
    draws = Boolean(point && then);
  }
  g.strokeStyle = foot;
  g.lineWidth = 1.5;
  g.stroke();
}

function drawThigh(g, at, angle, forward) {
  const hip = at("hip"), knee = at("knee");
  if (!hip || !knee || angle === null || !forward) return;
  const radius = Math.hypot(knee.x - hip.x, knee.y - hip.y) / 2;
  const down = Math.PI / 2, end = down - forward * angle * Math.PI / 180;
  g.beginPath();
  g.moveTo(hip.x, hip.y);
  g.arc(hip.x, hip.y, radius, down, end, (end < down));
  g.closePath();
  g.fillStyle = "rgba(230,159,0,0.3)";
  g.fill();
  g.font = "600 16px system-ui, sans-serif";
  g.textAlign = "center";
  const text = `${angle.toFixed(0)}°`, x = knee.x + forward * 34, y = knee.y - 6;
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
function nearest(track, seconds) {
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
