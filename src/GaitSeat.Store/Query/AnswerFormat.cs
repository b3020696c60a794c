namespace GaitSeat.Store;

/// <summary>How an answer is written to a file.</summary>
public enum AnswerFormat
{
    /// <summary>UTF-8 with a first line of names; null is an empty field.</summary>
    Csv,

    /// <summary>One array of objects.</summary>
    Json,

    /// <summary>Parquet, Zstandard.</summary>
    Parquet,
}
