namespace GaitSeat.Pipeline.Settings;

/// <summary>One thing wrong in a pipeline file.</summary>
/// <param name="File">The file as it was named.</param>
/// <param name="Line">1-based line.</param>
/// <param name="Key">Dotted key, such as <c>scout.rate_hz</c>.</param>
/// <param name="Problem">What was found and what is allowed.</param>
public sealed record SettingsError(string File, long Line, string Key, string Problem)
{
    public override string ToString() => $"{File}:{Line}: {Key}: {Problem}";
}

/// <summary>A pipeline file that cannot be used; carries every error found, not only the first.</summary>
public sealed class SettingsException(IReadOnlyList<SettingsError> errors)
    : Exception(string.Join(Environment.NewLine, errors))
{
    public IReadOnlyList<SettingsError> Errors { get; } = errors;
}
