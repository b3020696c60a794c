using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Reflection;
using System.Text;

namespace GaitSeat.Pipeline.Settings;

/// <summary>Writes a settings record as a pipeline file that holds every setting with its meaning and range.</summary>
public static class SettingsWriter
{
    private const int CommentWidth = 110;

    /// <param name="docs">The meaning of each setting; null for bare keys and values (the canonical text that is hashed).</param>
    public static string Write(object settings, SettingDocs? docs)
    {
        var text = new StringBuilder();
        WriteRecord(text, settings, docs, 0);
        return text.ToString();
    }

    private static void WriteRecord(StringBuilder text, object record, SettingDocs? docs, int depth)
    {
        var indent = new string(' ', depth * 2);
        foreach (var property in SettingNames.PropertiesOf(record.GetType()))
        {
            var value = property.GetValue(record);
            if (docs is not null) WriteComment(text, indent, docs.Of(property), property);
            if (value is not null && SettingNames.IsNested(property.PropertyType))
            {
                text.Append(CultureInfo.InvariantCulture, $"{indent}{SettingNames.Of(property)}:\n");
                WriteRecord(text, value, docs, depth + 1);
            }
            else
            {
                text.Append(CultureInfo.InvariantCulture, $"{indent}{SettingNames.Of(property)}: {Scalar(value)}\n");
            }
        }
    }

    private static void WriteComment(StringBuilder text, string indent, string doc, PropertyInfo property)
    {
        if (property.GetCustomAttribute<RangeAttribute>() is { } range)
            doc = string.Create(CultureInfo.InvariantCulture, $"{doc} Allowed: {range.Minimum} to {range.Maximum}.").TrimStart();
        var line = new StringBuilder();
        foreach (var word in doc.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length + word.Length > CommentWidth - indent.Length)
            {
                text.Append(CultureInfo.InvariantCulture, $"{indent}#{line}\n");
                line.Clear();
            }

            line.Append(' ').Append(word);
        }

        if (line.Length > 0) text.Append(CultureInfo.InvariantCulture, $"{indent}#{line}\n");
    }

    private static string Scalar(object? value) => value switch
    {
        null => "null",
        bool b => b ? "true" : "false",
        double d => d.ToString("R", CultureInfo.InvariantCulture),
        Enum e => SettingNames.Snake(e.ToString()),
        string[] texts => "[" + string.Join(", ", texts.Select(Quoted)) + "]",
        string s => Quoted(s),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture)!,
    };

    private static string Quoted(string text) => "'" + text.Replace("'", "''", StringComparison.Ordinal) + "'";
}
