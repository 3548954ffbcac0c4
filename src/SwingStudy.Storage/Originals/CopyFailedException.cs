namespace SwingStudy.Storage.Originals;

/// <summary>The copy could not be written, while the file could be read: never leaves this folder.</summary>
internal sealed class CopyFailedException(string message, Exception cause) : Exception(message, cause);
