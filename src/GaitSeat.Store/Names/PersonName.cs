using System.Text.RegularExpressions;

namespace GaitSeat.Store;

/// <summary>
/// A guess whether a file's name tells a person's: two words side by side that begin with a capital and go on in at least two small letters, neither of them a word of the trade, of cameras or of the
/// calendar: <c>Anna_Berg-2026.mp4</c>, <c>AnnaBerg.mov</c>. A first name alone, or names in small letters, are not found; common sense, no source.
/// </summary>
public static partial class PersonName
{
    private static readonly HashSet<string> Plain = new(StringComparer.OrdinalIgnoreCase)
    {
        "Rising", "Sitting", "Trot", "Walk", "Canter", "Gallop", "Halt", "Left", "Right", "Rein", "Hand", "Side", "Lesson", "Ride", "Rider", "Horse", "Clip", "Video", "Movie", "Film", "Take", "Test", "Arena", "School",
        "Indoor", "Outdoor", "Stirrup", "Stirrups", "Short", "Long", "Warm", "Cool", "Session", "Camera", "Cam", "Screen", "Recording", "Copy", "Final", "Part", "Day", "Week", "Spring", "Summer", "Autumn", "Winter",
        "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December", "Jan", "Feb", "Mar", "Apr", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
        "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun", "The", "And", "New", "Old", "First", "Second", "Third",
    };

    public static bool LooksLikeOneIn(string? fileName) =>
        fileName is not null && Pairs().Matches(Path.GetFileNameWithoutExtension(fileName)).Any(m => !Plain.Contains(m.Groups[1].Value) && !Plain.Contains(m.Groups[2].Value));

    /// <summary>The second word is only looked at, so that of three words both pairs are tried.</summary>
    [GeneratedRegex(@"(?<!\p{L})(?:\p{Lu}\p{Ll}+)*?(\p{Lu}\p{Ll}{2,})(?=[ _\-.,]{0,2}(\p{Lu}\p{Ll}{2,}))", RegexOptions.CultureInvariant)]
    private static partial Regex Pairs();
}
