import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Label;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;
import org.objectweb.asm.commons.GeneratorAdapter;
import org.objectweb.asm.commons.Method;

/**
 * A step of the build (decision 0860): makes at the build what Java else makes at the first run of each place. A lambda becomes a
 * class of its own beside its class ({@code Outline$$3}, in its nest), {@code equals} and {@code hashCode} of a record become code.
 * {@code java PlainClasses.java FOLDER}: the folder of compiled classes. What is plain already stays as it is.
 *
 * <p>What they do is told by the documentation of {@code java.lang.invoke.LambdaMetafactory} and {@code java.lang.runtime.ObjectMethods}.
 */
public final class PlainClasses {
    private static final String LAMBDA = "java/lang/invoke/LambdaMetafactory";
    private static final String RECORD = "java/lang/runtime/ObjectMethods";
    private static final Type OBJECT = Type.getType(Object.class);
    private static final Type OBJECTS = Type.getType(java.util.Objects.class);
    private static final String ONLY = "only";

    private final Path folder;
    private final Map<String, TreeSet<String>> nests = new TreeMap<>();
    private boolean changed;

    private PlainClasses(Path folder) {
        this.folder = folder;
    }

    public static void main(String[] args) throws IOException {
        new PlainClasses(Path.of(args[0])).all(Path.of(args[0], "lapyard"));
    }

    private void all(Path ours) throws IOException {
        for (Path file : classes(ours, false)) {
            plain(file);
        }
        for (Path file : classes(ours, true)) {
            if (Files.notExists(file.resolveSibling(file.getFileName().toString().replaceFirst("\\$\\$.*", ".class")))) {
                Files.delete(file);
            } else {
                ClassReader made = new ClassReader(Files.readAllBytes(file));
                made.accept(new ClassVisitor(Opcodes.ASM9) {
                    @Override
                    public void visitNestHost(String host) {
                        nests.computeIfAbsent(host, any -> new TreeSet<>()).add(made.getClassName());
                    }
                }, ClassReader.SKIP_CODE);
            }
        }
        for (Map.Entry<String, TreeSet<String>> nest : nests.entrySet()) {
            tellMembers(file(nest.getKey()), nest.getValue());
        }
    }

    private Path file(String name) {
        return folder.resolve(name + ".class");
    }

    private static List<Path> classes(Path ours, boolean made) throws IOException {
        try (Stream<Path> files = Files.walk(ours)) {
            return files.filter(file -> file.toString().endsWith(".class") && file.toString().contains("$$") == made).sorted().toList();
        }
    }

    /** A class tells who may use what is its own: the Java Virtual Machine Specification, 4.7.29. */
    private static void tellMembers(Path host, TreeSet<String> members) throws IOException {
        ClassReader read = new ClassReader(Files.readAllBytes(host));
        ClassWriter written = new ClassWriter(0);
        read.accept(new ClassVisitor(Opcodes.ASM9, written) {
            @Override
            public void visitNestMember(String member) {
                members.remove(member);
                super.visitNestMember(member);
            }
        }, 0);
        if (!members.isEmpty()) {
            members.forEach(written::visitNestMember);
            Files.write(host, written.toByteArray());
        }
    }

    private void plain(Path file) throws IOException {
        changed = false;
        ClassReader read = new ClassReader(Files.readAllBytes(file));
        ClassWriter written = new ClassWriter(ClassWriter.COMPUTE_MAXS);
        read.accept(new Places(read.getClassName(), written), 0);
        if (changed) {
            Files.write(file, written.toByteArray());
        }
    }

    /** Finds the places of a class that Java would link at their first run. */
    private final class Places extends ClassVisitor {
        private final String name;
        private String host;
        private int made;

        Places(String name, ClassWriter written) {
            super(Opcodes.ASM9, written);
            this.name = name;
            host = name;
        }

        @Override
        public void visitNestHost(String to) {
            host = to;
            super.visitNestHost(to);
        }

        @Override
        public MethodVisitor visitMethod(int access, String method, String type, String generic, String[] thrown) {
            MethodVisitor code = super.visitMethod(access, method, type, generic, thrown);
            return new MethodVisitor(Opcodes.ASM9, code) {
                @Override
                public void visitInvokeDynamicInsn(String called, String asked, Handle how, Object... with) {
                    if (how.getOwner().equals(LAMBDA) && how.getName().equals("metafactory")) {
                        lambda(this, called, asked, with);
                    } else if (how.getOwner().equals(RECORD) && !called.equals("toString")) {
                        changed = true;
                        GeneratorAdapter into = new GeneratorAdapter(code, access, method, type);
                        if (called.equals("equals")) {
                            equalParts(into, Type.getObjectType(name), with);
                        } else {
                            hashOfParts(into, Type.getObjectType(name), with);
                        }
                    } else {
                        super.visitInvokeDynamicInsn(called, asked, how, with);
                    }
                }
            };
        }

        private void lambda(MethodVisitor code, String called, String asked, Object... with) {
            changed = true;
            Type made = Type.getObjectType(name + "$$" + this.made++);
            write(made, lambdaClass(made, host, new Method(called, asked), (Type) with[0], (Handle) with[1], (Type) with[2]));
            if (Type.getArgumentTypes(asked).length == 0) {
                code.visitFieldInsn(Opcodes.GETSTATIC, made.getInternalName(), ONLY, Type.getReturnType(asked).getDescriptor());
            } else {
                code.visitMethodInsn(Opcodes.INVOKESTATIC, made.getInternalName(), "of", asked, false);
            }
        }
    }

    private void write(Type made, byte[] code) {
        try {
            Files.write(file(made.getInternalName()), code);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void hashOfParts(GeneratorAdapter into, Type record, Object... parts) {
        into.pop();
        into.push(0);
        for (int i = 2; i < parts.length; i++) {
            into.push(31);
            into.math(GeneratorAdapter.MUL, Type.INT_TYPE);
            Type type = part(into, record, (Handle) parts[i]);
            Type by = primitive(type) ? boxOf(type) : OBJECTS;
            into.invokeStatic(by, new Method("hashCode", Type.INT_TYPE, new Type[] {primitive(type) ? type : OBJECT}));
            into.math(GeneratorAdapter.ADD, Type.INT_TYPE);
        }
    }

    private static void equalParts(GeneratorAdapter into, Type record, Object... parts) {
        Label other = into.newLabel();
        into.pop2();
        into.loadArg(0);
        into.instanceOf(record);
        into.ifZCmp(GeneratorAdapter.EQ, other);
        for (int i = 2; i < parts.length; i++) {
            Type type = part(into, record, (Handle) parts[i]);
            into.loadArg(0);
            into.checkCast(record);
            into.getField(record, ((Handle) parts[i]).getName(), type);
            if (primitive(type)) {
                into.invokeStatic(boxOf(type), new Method("compare", Type.INT_TYPE, new Type[] {type, type}));
                into.ifZCmp(GeneratorAdapter.NE, other);
            } else {
                into.invokeStatic(OBJECTS, new Method("equals", Type.BOOLEAN_TYPE, new Type[] {OBJECT, OBJECT}));
                into.ifZCmp(GeneratorAdapter.EQ, other);
            }
        }
        into.push(true);
        into.returnValue();
        into.mark(other);
        into.visitFrame(Opcodes.F_NEW, 2, new Object[] {record.getInternalName(), OBJECT.getInternalName()}, 0, new Object[0]);
        into.push(false);
    }

    private static Type part(GeneratorAdapter into, Type record, Handle part) {
        Type type = Type.getType(part.getDesc());
        into.loadThis();
        into.getField(record, part.getName(), type);
        return type;
    }

    private static Type boxOf(Type type) {
        return switch (type.getSort()) {
            case Type.BOOLEAN -> Type.getType(Boolean.class);
            case Type.CHAR -> Type.getType(Character.class);
            case Type.BYTE -> Type.getType(Byte.class);
            case Type.SHORT -> Type.getType(Short.class);
            case Type.INT -> Type.getType(Integer.class);
            case Type.LONG -> Type.getType(Long.class);
            case Type.FLOAT -> Type.getType(Float.class);
            default -> Type.getType(Double.class);
        };
    }

    private static boolean primitive(Type type) {
        return type.getSort() < Type.ARRAY;
    }

    /** A class that holds what {@code asked} takes and whose one method, of the type {@code erased}, calls {@code body}. */
    private static byte[] lambdaClass(Type made, String host, Method asked, Type erased, Handle body, Type real) {
        ClassWriter written = new ClassWriter(ClassWriter.COMPUTE_MAXS);
        Type shown = asked.getReturnType();
        Type[] held = asked.getArgumentTypes();
        int access = Opcodes.ACC_FINAL | Opcodes.ACC_SYNTHETIC | Opcodes.ACC_SUPER;
        written.visit(Opcodes.V17, access, made.getInternalName(), null, OBJECT.getInternalName(), new String[] {shown.getInternalName()});
        written.visitNestHost(host);
        for (int i = 0; i < held.length; i++) {
            written.visitField(Opcodes.ACC_PRIVATE | Opcodes.ACC_FINAL, "held" + i, held[i].getDescriptor(), null, null);
        }
        Method create = new Method("<init>", Type.VOID_TYPE, held);
        GeneratorAdapter code = method(written, Opcodes.ACC_PRIVATE, create);
        code.loadThis();
        code.invokeConstructor(OBJECT, Method.getMethod("void <init> ()"));
        for (int i = 0; i < held.length; i++) {
            code.loadThis();
            code.loadArg(i);
            code.putField(made, "held" + i, held[i]);
        }
        end(code);
        boolean one = held.length == 0;
        code = method(written, Opcodes.ACC_STATIC, one ? Method.getMethod("void <clinit> ()") : new Method("of", shown, held));
        code.newInstance(made);
        code.dup();
        code.loadArgs();
        code.invokeConstructor(made, create);
        if (one) {
            written.visitField(Opcodes.ACC_STATIC | Opcodes.ACC_FINAL, ONLY, shown.getDescriptor(), null, null);
            code.putStatic(made, ONLY, shown);
        }
        end(code);
        call(method(written, Opcodes.ACC_PUBLIC, new Method(asked.getName(), erased.getDescriptor())), made, held, erased, body, real);
        return written.toByteArray();
    }

    private static void call(GeneratorAdapter code, Type made, Type[] held, Type erased, Handle body, Type real) {
        boolean creates = body.getTag() == Opcodes.H_NEWINVOKESPECIAL;
        Type owner = Type.getObjectType(body.getOwner());
        Type[] wanted = Type.getArgumentTypes(body.getDesc());
        // an instance's method takes its instance first
        int at = creates || body.getTag() == Opcodes.H_INVOKESTATIC ? 0 : -1;
        if (creates) {
            code.newInstance(owner);
            code.dup();
        }
        for (int i = 0; i < held.length; i++, at++) {
            code.loadThis();
            code.getField(made, "held" + i, held[i]);
        }
        Type[] given = erased.getArgumentTypes();
        for (int i = 0; i < given.length; i++, at++) {
            Type is = real.getArgumentTypes()[i];
            code.loadArg(i);
            convert(code, given[i], is);
            if (at >= 0 && (primitive(is) || primitive(wanted[at]))) {
                convert(code, is, wanted[at]);
            }
        }
        code.visitMethodInsn(switch (body.getTag()) {
            case Opcodes.H_INVOKESTATIC -> Opcodes.INVOKESTATIC;
            case Opcodes.H_NEWINVOKESPECIAL -> Opcodes.INVOKESPECIAL;
            default -> body.isInterface() ? Opcodes.INVOKEINTERFACE : Opcodes.INVOKEVIRTUAL;
        }, body.getOwner(), body.getName(), body.getDesc(), body.isInterface());
        convert(code, creates ? owner : Type.getReturnType(body.getDesc()), erased.getReturnType());
        end(code);
    }

    private static void convert(GeneratorAdapter code, Type from, Type to) {
        if (from.equals(to)) {
            return;
        }
        if (to.getSort() == Type.VOID) {
            if (from.getSize() == 2) {
                code.pop2();
            } else {
                code.pop();
            }
        } else if (primitive(from) && primitive(to)) {
            code.cast(from, to);
        } else if (primitive(from)) {
            code.valueOf(from);
        } else if (primitive(to)) {
            code.unbox(to);
        } else {
            code.checkCast(to);
        }
    }

    private static GeneratorAdapter method(ClassWriter written, int access, Method method) {
        GeneratorAdapter code = new GeneratorAdapter(access, method, written.visitMethod(access, method.getName(), method.getDescriptor(), null, null));
        code.visitCode();
        return code;
    }

    private static void end(GeneratorAdapter code) {
        code.returnValue();
        code.endMethod();
    }
}
