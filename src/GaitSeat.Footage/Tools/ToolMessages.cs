namespace GaitSeat.Footage;

/// <summary>What a tool said on its error stream: the first and the last lines, the rest only counted.</summary>
internal sealed class ToolMessages
{
    private const int KeptEachEnd = 20;
    private readonly Lock _lock = new();
    private readonly List<string> _first = [];
    private readonly Queue<string> _last = new();

    public int Count { get; private set; }

    public void Add(string line)
    {
        if (string.IsNullOrWhiteSpace(line)) return;
        lock (_lock)
        {
            Count++;
            if (_first.Count < KeptEachEnd)
            {
                _first.Add(line);
                return;
            }

            _last.Enqueue(line);
            if (_last.Count > KeptEachEnd) _last.Dequeue();
        }
    }

    public bool Mention(string text) => Lines().Any(line => line.Contains(text, StringComparison.OrdinalIgnoreCase));

    /// <summary>The last line without the <c>[mov,mp4 @ 0x55..]</c> in front, which differs from run to run.</summary>
    public string LastLine() => Lines() is [.., var line] ? Bare(line) : "no message";

    public IReadOnlyList<string> Lines()
    {
        lock (_lock) return [.. _first, .. _last];
    }

    private static string Bare(string line)
    {
        var end = line.StartsWith('[') ? line.IndexOf("] ", StringComparison.Ordinal) : -1;
        return line[(end < 0 ? 0 : end + 2)..].Trim();
    }
}
