using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Reflection;
using YamlDotNet.RepresentationModel;

namespace GaitSeat.Pipeline.Settings;

/// <summary>
/// Puts a YAML mapping onto a settings record: every key must be known, every value of the right kind and inside its <see cref="RangeAttribute"/>.
/// What is not in the file keeps its default. Errors are collected, not thrown, so that a user sees all of them at once.
/// </summary>
internal sealed class SettingsBinder(string file)
{
    private readonly List<SettingsError> _errors = [];

    public IReadOnlyList<SettingsError> Errors => _errors;

    public object Bind(Type type, YamlNode node, string path)
    {
        var record = Activator.CreateInstance(type) ?? throw new InvalidOperationException($"{type} needs a parameterless constructor");
        if (node is not YamlMappingNode mapping)
        {
            Add(node, path, $"expected a group of settings, found {Describe(node)}");
            return record;
        }

        var known = SettingNames.PropertiesOf(type).ToDictionary(SettingNames.Of);
        foreach (var (keyNode, value) in mapping.Children)
        {
            var key = (keyNode as YamlScalarNode)?.Value ?? "";
            var full = path.Length == 0 ? key : $"{path}.{key}";
            if (known.TryGetValue(key, out var property)) BindProperty(record, property, value, full);
            else Add(keyNode, full, UnknownKey(key, known.Keys));
        }

        return record;
    }

    private void BindProperty(object record, PropertyInfo property, YamlNode value, string path)
    {
        if (SettingNames.IsNested(property.PropertyType))
        {
            property.SetValue(record, Bind(property.PropertyType, value, path));
            return;
        }

        if (Convert(property.PropertyType, value, path) is not { } converted) return;
        if (property.GetCustomAttribute<RangeAttribute>() is { } range && converted is IConvertible number && !range.IsValid(number))
            Add(value, path, string.Create(CultureInfo.InvariantCulture, $"{converted} is out of range; allowed {range.Minimum} to {range.Maximum}"));
        else
            property.SetValue(record, converted);
    }

    private object? Convert(Type type, YamlNode node, string path)
    {
        var bare = Nullable.GetUnderlyingType(type) ?? type;
        if (bare == typeof(string[])) return Texts(node, path);
        if (node is not YamlScalarNode { Value: { } text })
        {
            Add(node, path, $"expected {Expected(bare)}, found {Describe(node)}");
            return null;
        }

        object? value = bare switch
        {
            _ when bare == typeof(string) => text is "null" or "~" ? null : text,
            _ when bare == typeof(double) && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var d) && double.IsFinite(d) => d,
            _ when bare == typeof(int) && int.TryParse(text, NumberStyles.Integer, CultureInfo.InvariantCulture, out var i) => i,
            _ when bare == typeof(bool) && bool.TryParse(text, out var b) => b,
            { IsEnum: true } => Enum.GetNames(bare).Where(n => SettingNames.Snake(n) == text).Select(n => Enum.Parse(bare, n)).FirstOrDefault(),
            _ => null,
        };
        var isNull = text is "null" or "~" && (bare == typeof(string) || bare != type);
        if (value is null && !isNull) Add(node, path, $"expected {Expected(bare)}, found '{text}'");
        return value;
    }

    private string[]? Texts(YamlNode node, string path)
    {
        if (node is YamlSequenceNode list && list.All(n => n is YamlScalarNode)) return [.. list.Select(n => ((YamlScalarNode)n).Value ?? "")];
        Add(node, path, $"expected a list of texts, found {Describe(node)}");
        return null;
    }

    private static string UnknownKey(string key, IReadOnlyCollection<string> known) =>
        SettingNames.Nearest(key, known) is { } near
            ? $"unknown setting; did you mean '{near}'?"
            : $"unknown setting; allowed here: {string.Join(", ", known)}";

    private static string Expected(Type type) => type switch
    {
        _ when type == typeof(double) => "a number without a unit (the unit is in the key)",
        _ when type == typeof(int) => "a whole number",
        _ when type == typeof(bool) => "true or false",
        { IsEnum: true } => "one of " + string.Join(", ", Enum.GetNames(type).Select(SettingNames.Snake)),
        _ => "a text",
    };

    private static string Describe(YamlNode node) => node switch
    {
        YamlScalarNode s => $"'{s.Value}'",
        YamlSequenceNode => "a list",
        _ => "a group of settings",
    };

    private void Add(YamlNode node, string path, string problem) => _errors.Add(new(file, node.Start.Line, path, problem));
}
