namespace GaitSeat.Store;

/// <summary>The dataset folder cannot be used as asked. The message says where, what is wrong and the remedy.</summary>
public sealed class DatasetException(string message, Exception? inner = null) : Exception(message, inner);
