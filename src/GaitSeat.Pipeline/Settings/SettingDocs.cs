using System.Reflection;
using System.Xml.Linq;

namespace GaitSeat.Pipeline.Settings;

/// <summary>The meaning of each setting, taken from the documentation the compiler writes beside each assembly: one text, in the code.</summary>
public sealed class SettingDocs
{
    private readonly Dictionary<string, string> _summaries = [];

    /// <summary>Reads the documentation of all our assemblies in a folder.</summary>
    public static SettingDocs Load(string folder)
    {
        var docs = new SettingDocs();
        foreach (var file in Directory.EnumerateFiles(folder, "GaitSeat.*.xml").Order(StringComparer.Ordinal))
        {
            foreach (var member in XDocument.Load(file).Descendants("member"))
            {
                if (member.Attribute("name")?.Value is { } name && member.Element("summary") is { } summary)
                    docs._summaries[name] = Text(summary);
            }
        }

        return docs;
    }

    /// <summary>The property's own summary, or that of its type where a group of settings says it all there.</summary>
    public string Of(PropertyInfo property) =>
        _summaries.GetValueOrDefault($"P:{property.DeclaringType?.FullName}.{property.Name}")
        ?? _summaries.GetValueOrDefault($"T:{property.PropertyType.FullName}", "");

    private static string Text(XElement element)
    {
        var parts = element.Nodes().Select(n => n switch
        {
            XText t => t.Value,
            XElement e when e.Attribute("cref") is { } cref => cref.Value.Split('.')[^1],
            XElement e => e.Value,
            _ => "",
        });
        return string.Join(' ', string.Concat(parts).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }
}
