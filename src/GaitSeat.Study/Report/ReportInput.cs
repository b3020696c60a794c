using GaitSeat.Study.Answers;

namespace GaitSeat.Study.Report;

/// <summary>The study file, as it was when it was run.</summary>
/// <param name="Sha256">Of its bytes, lower-case hex.</param>
/// <param name="Registered">The day the file says it was fixed on.</param>
/// <param name="ChangedOn">The day it was last changed, as the disk tells.</param>
public sealed record Registration(string FileName, string Sha256, DateOnly? Registered, DateOnly ChangedOn, string Text);

/// <summary>What is known of the rows before any question is asked of them.</summary>
/// <param name="ClipsSetAside">By reason.</param>
/// <param name="StridesLeftOut">Strides that were cut and dropped, by reason.</param>
/// <param name="FramesLeftOut">Frames that were looked at and left out, by reason.</param>
/// <param name="SchemaVersions">Layouts the rows were written in; older ones are read as the present one.</param>
/// <param name="Fingerprints">SHA-256 over the columns each question read, by question.</param>
public sealed record DataOrigin(
    string Folder, string PipelineHash, string ModelHash, IReadOnlyList<string> SoftwareVersions, IReadOnlyList<int> SchemaVersions,
    long Clips, IReadOnlyList<(string Reason, long Count)> ClipsSetAside, long ClipsWithoutStrides, long Strides,
    IReadOnlyList<(string Reason, long Count)> StridesLeftOut, IReadOnlyList<(string Reason, long Count)> FramesLeftOut,
    DateOnly? FirstSession, DateOnly? LastSession, IReadOnlyList<string> Fingerprints)
{
    /// <summary>Files of the user's with more values, and what became of their lines.</summary>
    public IReadOnlyList<(string File, string Sha256, long Lines, long Unmatched)> ValuesFiles { get; init; } = [];
}

/// <summary>All that a report is made from.</summary>
/// <param name="DataNote">What must be said wherever a number of it stands, such as that the data are invented; may be empty.</param>
/// <param name="Data">Nothing for a study that only plans.</param>
/// <param name="Command">What was typed.</param>
public sealed record ReportInput(
    string Title, string DataNote, Registration File, DataOrigin? Data, IReadOnlyList<StudyResult> Results, string Command, string SoftwareVersion);
