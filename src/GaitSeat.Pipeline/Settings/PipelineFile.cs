using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace GaitSeat.Pipeline.Settings;

/// <summary>Reads a pipeline file: YAML with the settings a user wants to change; the rest keep their defaults.</summary>
public static class PipelineFile
{
    /// <summary>Without a file all defaults hold.</summary>
    /// <exception cref="SettingsException">As for <see cref="Read"/>.</exception>
    public static PipelineSettings ReadOrDefaults(string? path) => path is null ? new PipelineSettings() : Read(path);

    /// <exception cref="SettingsException">The file cannot be read or anything in it is wrong; every error is listed with its line.</exception>
    public static PipelineSettings Read(string path)
    {
        try
        {
            return Parse(File.ReadAllText(path), path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new SettingsException([new(path, 0, "file", e.Message)]);
        }
    }

    /// <param name="yaml">The text of the file.</param>
    /// <param name="file">How the file is called in errors.</param>
    public static PipelineSettings Parse(string yaml, string file)
    {
        var stream = new YamlStream();
        try
        {
            stream.Load(new StringReader(yaml));
        }
        catch (Exception e) when (e is YamlException or InvalidOperationException)
        {
            // The scanner throws InvalidOperationException for some malformed flow sequences.
            throw new SettingsException([new(file, (e as YamlException)?.Start.Line ?? 1, "file", $"not valid YAML: {e.Message}")]);
        }

        if (stream.Documents.Count == 0) return new PipelineSettings();
        var binder = new SettingsBinder(file);
        var settings = (PipelineSettings)binder.Bind(typeof(PipelineSettings), stream.Documents[0].RootNode, "");
        return binder.Errors.Count > 0 ? throw new SettingsException(binder.Errors) : settings;
    }
}
