namespace GaitSeat.Study.Report;

/// <summary>A piece of a report. The pages in HTML and Markdown are written from the same pieces, so that they hold the same numbers.</summary>
public abstract record ReportBlock;

/// <param name="Level">2 for a chapter, 3 below it.</param>
public sealed record Heading(int Level, string Text) : ReportBlock;

public sealed record Paragraph(string Text) : ReportBlock;

/// <summary>What a reader must not miss.</summary>
public sealed record Warning(string Text) : ReportBlock;

public sealed record BulletList(IReadOnlyList<string> Items) : ReportBlock;

/// <param name="Heads">The first column holds names, the others numbers.</param>
public sealed record FigureTable(IReadOnlyList<string> Heads, IReadOnlyList<IReadOnlyList<string>> Rows) : ReportBlock;

/// <summary>A picture that lies beside the report as PNG and SVG.</summary>
/// <param name="File">Path of the PNG from the report's folder, with forward slashes.</param>
/// <param name="Caption">What it shows, in words that do without the picture.</param>
public sealed record Picture(string File, string Caption) : ReportBlock;

public sealed record CodeBlock(string Text) : ReportBlock;

/// <summary>A whole report.</summary>
public sealed record ReportPage(string Title, IReadOnlyList<ReportBlock> Blocks);
