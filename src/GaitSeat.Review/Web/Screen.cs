namespace GaitSeat.Review.Web;

/// <summary>A screen of the page. Its content, style and script are the files of its name; head and top are the same for all.</summary>
/// <param name="Tools">What stands at the end of the top, HTML.</param>
internal sealed record Screen(string Path, string Name, string Title, string Tools = "")
{
    internal static IReadOnlyList<Screen> All { get; } =
    [
        new("/", "review", "Review", "<button type=\"button\" id=\"open-queue\" aria-haspopup=\"dialog\">Queue</button>"),
        new("/season", "season", "Season"),
        new("/run", "run", "Run"),
    ];

    /// <summary>The way to the others, HTML.</summary>
    internal string Ways => string.Concat(All.Select(s => $"<a href=\"{s.Path}\"{(s == this ? " aria-current=\"page\"" : "")}>{s.Title}</a>"));
}
