namespace SwingStudy.Storage.Originals;

/// <summary>The pair of keys behind encrypted originals: whoever has the public half can put an original away, only the open vault gives the half that reads it.</summary>
/// <param name="Public">Public key on the curve P-256, as SubjectPublicKeyInfo.</param>
/// <param name="Private">Private key, as PKCS #8; null while the vault is locked.</param>
public sealed record OriginalKeys(byte[] Public, byte[]? Private);
