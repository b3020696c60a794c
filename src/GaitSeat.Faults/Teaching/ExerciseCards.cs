using GaitSeat.Model;

namespace GaitSeat.Faults.Teaching;

/// <summary>What to do about a fault, in the coach's words.</summary>
/// <param name="Sections">Text under each heading, by heading.</param>
public sealed record ExerciseCard(Fault Fault, string Title, IReadOnlyDictionary<string, string> Sections);

/// <summary>The exercise cards: one Markdown file a fault, named after it. The coach may change every word, but no section may be left out.</summary>
public static class ExerciseCards
{
    /// <summary>Headings every card has, in this order.</summary>
    public static IReadOnlyList<string> Headings { get; } = ["Set-up", "What to do", "What to feel", "How long", "When to stop", "Cautions"];

    /// <summary>Reads the card of every fault.</summary>
    /// <exception cref="TeachingException">A card is missing or lacks a section: which.</exception>
    public static IReadOnlyDictionary<Fault, ExerciseCard> Read(string folder)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        return Enum.GetValues<Fault>().ToDictionary(f => f, f => ReadOne(folder, f));
    }

    private static ExerciseCard ReadOne(string folder, Fault fault)
    {
        var path = Path.Combine(folder, fault.ToTerm() + ".md");
        if (!File.Exists(path)) throw new TeachingException($"The exercise card '{path}' is missing. Restore it from the repository, or write one with the sections {string.Join(", ", Headings)}.");
        var parts = File.ReadAllText(path).ReplaceLineEndings("\n").Split("\n## ");
        var sections = parts.Skip(1).Select(p => p.Split('\n', 2)).Where(p => p.Length == 2).ToDictionary(p => p[0].Trim(), p => p[1].Trim(), StringComparer.Ordinal);
        if (!parts[0].StartsWith("# ", StringComparison.Ordinal)) throw new TeachingException($"'{path}' begins without a title; '# Title' is required in its first line.");
        if (Headings.FirstOrDefault(h => !sections.TryGetValue(h, out var text) || text.Length == 0) is { } absent) throw new TeachingException($"'{path}' has no text under '## {absent}'; every card has {string.Join(", ", Headings)}.");
        return new(fault, parts[0].Split('\n')[0][2..].Trim(), sections);
    }
}
