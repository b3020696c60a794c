using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Study.Definition;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace GaitSeat.Pipeline.Studies;

/// <summary>
/// A study file: one question, or <c>questions:</c> with several, each a group of settings; what stands beside the list holds for all of them.
/// <c>title</c>, <c>registered</c> (the day the file was fixed) and <c>data_note</c> (printed on every page and picture) belong to the whole.
/// </summary>
public sealed class StudyFile
{
    private const string QuestionsKey = "questions", TitleKey = "title", RegisteredKey = "registered", DataNoteKey = "data_note";
    private readonly IReadOnlyList<(YamlMappingNode Settings, long Line)> _nodes;

    private StudyFile(string path, byte[] content, DateTimeOffset changedAt, YamlMappingNode root)
    {
        (Path, ChangedAt) = (path, changedAt);
        Sha256 = Convert.ToHexStringLower(SHA256.HashData(content));
        var binder = new SettingsBinder(path);
        var errors = new List<SettingsError>();
        Title = Text(root, TitleKey) ?? System.IO.Path.GetFileNameWithoutExtension(path);
        DataNote = Text(root, DataNoteKey) ?? "";
        Registered = DateOf(root, errors);
        _nodes = QuestionNodes(root, errors);
        Questions = [.. _nodes.Select(n => EveryMeasure.In((StudySettings)binder.Bind(typeof(StudySettings), n.Settings, "")))];
        errors.AddRange(binder.Errors);
        if (errors.Count == 0) errors.AddRange(Questions.SelectMany((q, i) => StudyCheck.Of(q).Select(m => ErrorOf(i, m))));
        if (errors.Count > 0) throw new SettingsException(errors);
    }

    public string Path { get; }

    /// <summary>SHA-256 of the file's bytes, lower-case hex.</summary>
    public string Sha256 { get; }

    /// <summary>When the file was last changed, as the disk tells.</summary>
    public DateTimeOffset ChangedAt { get; }

    public string Title { get; }

    /// <summary>The day the file says it was fixed on; nothing where it does not say.</summary>
    public DateOnly? Registered { get; }

    public string DataNote { get; }

    public IReadOnlyList<StudySettings> Questions { get; }

    /// <exception cref="SettingsException">The file cannot be read or anything in it is wrong; every error is listed with its line.</exception>
    public static StudyFile Read(string path)
    {
        try
        {
            return Parse(path, File.ReadAllBytes(path), new(File.GetLastWriteTimeUtc(path), TimeSpan.Zero));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new SettingsException([new(path, 0, "file", e.Message)]);
        }
    }

    internal static StudyFile Parse(string path, byte[] content, DateTimeOffset changedAt)
    {
        var stream = new YamlStream();
        try
        {
            stream.Load(new StringReader(Encoding.UTF8.GetString(content)));
        }
        catch (Exception e) when (e is YamlException or InvalidOperationException)
        {
            throw new SettingsException([new(path, (e as YamlException)?.Start.Line ?? 1, "file", $"not valid YAML: {e.Message}")]);
        }

        return stream.Documents.Count > 0 && stream.Documents[0].RootNode is YamlMappingNode root
            ? new(path, content, changedAt, root)
            : throw new SettingsException([new(path, 1, "file", "holds no settings; write at least question, kind and outcomes")]);
    }

    /// <summary>A mistake of a question with the line it stands on: that of its key, or of the question where the key is a default.</summary>
    internal SettingsError ErrorOf(int question, StudyMistake mistake)
    {
        var key = mistake.Key.Split('.')[0];
        var (settings, first) = _nodes[question];
        var line = settings.Children.FirstOrDefault(c => (c.Key as YamlScalarNode)?.Value == key).Key?.Start.Line ?? first;
        return new(Path, line, mistake.Key, mistake.Problem);
    }

    private IReadOnlyList<(YamlMappingNode, long)> QuestionNodes(YamlMappingNode root, List<SettingsError> errors)
    {
        var shared = Without(root, QuestionsKey, TitleKey, RegisteredKey, DataNoteKey);
        if (!root.Children.TryGetValue(QuestionsKey, out var list)) return [(shared, root.Start.Line)];
        if (list is YamlSequenceNode { Children.Count: > 0 } several && several.All(q => q is YamlMappingNode)) return [.. several.Cast<YamlMappingNode>().Select(q => (Over(shared, q), q.Start.Line))];
        errors.Add(new(Path, list.Start.Line, QuestionsKey, "expected a list of questions, each a group of settings"));
        return [];
    }

    private DateOnly? DateOf(YamlMappingNode root, List<SettingsError> errors)
    {
        if (Text(root, RegisteredKey) is not { } text) return null;
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)) return date;
        errors.Add(new(Path, root.Children[RegisteredKey].Start.Line, RegisteredKey, $"expected a day such as 2026-03-01, found '{text}'"));
        return null;
    }

    private static string? Text(YamlMappingNode root, string key) => root.Children.TryGetValue(key, out var node) ? (node as YamlScalarNode)?.Value : null;

    private static YamlMappingNode Without(YamlMappingNode node, params string[] keys) => new(node.Children.Where(c => !keys.Contains((c.Key as YamlScalarNode)?.Value)));

    /// <summary>The second mapping laid over the first, groups within them likewise.</summary>
    private static YamlMappingNode Over(YamlMappingNode below, YamlMappingNode above)
    {
        var merged = new YamlMappingNode(below.Children.Where(c => !above.Children.ContainsKey(c.Key)));
        foreach (var (key, value) in above.Children)
            merged.Add(key, value is YamlMappingNode group && below.Children.TryGetValue(key, out var under) && under is YamlMappingNode lower ? Over(lower, group) : value);
        return merged;
    }
}
