using System.Reflection;
using System.Text;

namespace GaitSeat.Pipeline.Settings;

/// <summary>How a property of a settings record is written in a pipeline file: snake_case of its name.</summary>
internal static class SettingNames
{
    public static string Of(PropertyInfo property) => Snake(property.Name);

    public static string Snake(string name)
    {
        var text = new StringBuilder();
        for (var i = 0; i < name.Length; i++)
        {
            var c = name[i];
            var startsWord = char.IsUpper(c) || (char.IsDigit(c) && i > 0 && !char.IsDigit(name[i - 1]));
            if (startsWord && i > 0 && (char.IsLower(name[i - 1]) || char.IsDigit(name[i - 1]) || (i + 1 < name.Length && char.IsLower(name[i + 1]))))
                text.Append('_');
            text.Append(char.ToLowerInvariant(c));
        }

        return text.ToString();
    }

    /// <summary>The settable properties of a settings record, in the order they are declared.</summary>
    public static IEnumerable<PropertyInfo> PropertiesOf(Type record) =>
        record.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.CanWrite && p.GetIndexParameters().Length == 0)
            .OrderBy(p => p.MetadataToken);

    public static bool IsNested(Type type) =>
        type is { IsClass: true, IsArray: false } && type != typeof(string);

    /// <summary>The known key nearest to a mistyped one, or null if none is near.</summary>
    public static string? Nearest(string key, IEnumerable<string> known)
    {
        var best = known.Select(k => (Key: k, Distance: EditDistance(key, k))).OrderBy(k => k.Distance).FirstOrDefault();
        return best.Key is not null && best.Distance <= Math.Max(2, key.Length / 3) ? best.Key : null;
    }

    private static int EditDistance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var above = row[j];
                row[j] = Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + (a[i - 1] == b[j - 1] ? 0 : 1));
                diagonal = above;
            }
        }

        return row[^1];
    }
}
